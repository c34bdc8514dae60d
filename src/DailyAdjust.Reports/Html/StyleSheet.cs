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

    private static string Read()
    {
        using var stream = typeof(StyleSheet).Assembly.GetManifestResourceStream("sheet.css")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
