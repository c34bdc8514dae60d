using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Html;

/// <summary>The page's only style sheet, carried inside the page.</summary>
internal static class StyleSheet
{
    private static readonly string Common = Read();

    /// <summary>With the sheet's id and the page number at the foot of every printed page.</summary>
    public static string For(SheetView view) => Common + Foot(view.Say($"{PageWords.Sheet} {view.Id}"));

    /// <summary>The page over all sites: links, past days, and in print a page for each site's round.</summary>
    public static string ForIndex(DateOnly? date) => Common + """
        a { color: inherit; } .stop > p, .stop > ul { margin: .35rem .65rem; } .site > .do { font-size: 1.15rem; line-height: 1.3; } .site small { white-space: nowrap; } .round > h2 { display: flex; flex-wrap: wrap; justify-content: space-between; align-items: baseline; column-gap: .6rem; } .site li > b { color: var(--ask); }
        .books { display: flex; flex-wrap: wrap; gap: .1rem 1rem; align-items: baseline; } .books a { padding: .2rem 0; } .days { padding: 0; list-style: none; } .days li { margin: 0; border-bottom: 1px solid var(--rule); } .days a { display: inline-block; padding: .4rem .3rem .4rem 0; } .days a:first-child { min-width: 6.5rem; }
        @media print { .round { break-before: page; } .past { display: none; } }

        """.ReplaceLineEndings("\n") + Foot($"{IndexWords.Title}{(date is { } day ? ", " + CodeWords.Date(day) : "")}");

    /// <summary>The books of a week or a season.</summary>
    public static string ForSummary(DateOnly from, DateOnly to) => Common + "table.numbers th { white-space: normal; }\n" + Foot($"{SummaryWords.Title}, {CodeWords.Date(from)} - {CodeWords.Date(to)}");

    /// <summary>One controller a page; ticks that print.</summary>
    public static string ForDoorCards { get; } = Common + """
        ol { margin: 0; padding-left: 1.4rem; } ol li { margin: .3rem 0; break-inside: avoid; } .tick { display: inline-block; width: 1.05rem; height: 1.05rem; border: 1.5px solid var(--text); vertical-align: -.15rem; }
        .door { padding-bottom: 2rem; } .door h2 { margin-top: 1rem; } td { padding-top: .18rem; padding-bottom: .18rem; }
        @media print { .door { break-after: page; font-size: 10pt; } .door:last-child { break-after: auto; } } @page { margin: 12mm; }

        """.ReplaceLineEndings("\n");

    private static string Foot(string text) =>
        $$"""
        @page { margin: 11mm 12mm 14mm; @bottom-left { content: "{{text}}"; font: 9pt sans-serif; } @bottom-right { content: counter(page) " / " counter(pages); font: 9pt sans-serif; } }

        """.ReplaceLineEndings("\n");

    private static string Read()
    {
        using var stream = typeof(StyleSheet).Assembly.GetManifestResourceStream("sheet.css")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
