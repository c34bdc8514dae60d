namespace DailyAdjust.Reports.Words;

/// <summary>Where the short text leaves something to the page.</summary>
internal static class ShortTextWords
{
    /// <summary>"and 3 more: see report.html".</summary>
    public static string AndMore(int count) => $"and {SectionWords.More(count)}: see {ReportFiles.Html}";

    /// <summary>"Did it run? 12, see report.html", where not one of them has room.</summary>
    public static string OnlyCounted(string title, int count) => $"{Titled(title)} {SiteWords.Count(count)}, see {ReportFiles.Html}";

    /// <summary>"Also in report.html: Rain, In force."</summary>
    public static string Also(IReadOnlyList<string> titles) => $"Also in {ReportFiles.Html}: {string.Join(", ", titles)}.";

    /// <summary>"Take hose and probe:", "Did it run?".</summary>
    public static string Titled(string title) => title.EndsWith('?') ? title : title + ":";
}
