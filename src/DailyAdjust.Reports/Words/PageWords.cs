namespace DailyAdjust.Reports.Words;

/// <summary>The head and foot of the page.</summary>
internal static class PageWords
{
    public const string Language = "en";
    public const string Sheet = "Sheet";

    public static string Title(SheetView view) =>
        $"{view.Sheet.Site.Name}: {SiteWords.Date(view.Sheet.Date)}, sheet {view.Id}";

    public static string Meta(SheetView view) =>
        $"{view.Sheet.Site.Name} · sheet {view.Id}"
        + (view.Issue.Replaces is { } old ? $" · replaces issue {SiteWords.Count(old)}" : "")
        + $" · as known at {view.Words.When(view.Sheet.AsOf)}";
}
