using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Html;

/// <summary>The page's only style sheet, carried inside the page.</summary>
internal static class StyleSheet
{
    private static readonly string Common = Read();

    /// <summary>With the sheet's id and the page number at the foot of every printed page.</summary>
    public static string For(DateOnly date, int issue) =>
        $$"""
        {{Common}}@page { margin: 12mm 12mm 15mm; @bottom-left { content: "{{PageWords.Sheet}} {{CodeWords.SheetId(date, issue)}}"; font: 9pt sans-serif; } @bottom-right { content: counter(page) " / " counter(pages); font: 9pt sans-serif; } }

        """;

    /// <summary>One controller a page; ticks that print.</summary>
    public static string ForDoorCards { get; } = Common + """
        ol { margin: 0; padding-left: 1.4rem; } ol li { margin: .3rem 0; break-inside: avoid; } .tick { display: inline-block; width: 1.05rem; height: 1.05rem; border: 1.5px solid var(--text); vertical-align: -.15rem; }
        .door { padding-bottom: 2rem; } .door h2 { margin-top: 1rem; } td { padding-top: .18rem; padding-bottom: .18rem; }
        @media print { .door { break-after: page; font-size: 10pt; } .door:last-child { break-after: auto; } } @page { margin: 12mm; }

        """.ReplaceLineEndings("\n");

    private static string Read()
    {
        using var stream = typeof(StyleSheet).Assembly.GetManifestResourceStream("sheet.css")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
