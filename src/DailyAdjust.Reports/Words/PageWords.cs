using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>The head and foot of the page.</summary>
internal static class PageWords
{
    public static readonly Phrase Sheet = new("Sheet");

    public static Phrase Title(SheetView view) =>
        $"{view.Sheet.Site.Name}: {SiteWords.Date(view.Sheet.Date)}, sheet {view.Id}";

    public static Phrase Meta(SheetView view) =>
        $"{view.Sheet.Site.Name} · sheet {view.Id}"
        + (view.Issue.Replaces is { } old ? $" · replaces issue {SiteWords.Count(old)}" : Phrase.Empty)
        + $" · as known at {view.Words.When(view.Sheet.AsOf)}";
}
