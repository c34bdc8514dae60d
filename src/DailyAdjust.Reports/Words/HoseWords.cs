using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>Where to send the hose, in the page's headline.</summary>
internal static class HoseWords
{
    private static readonly Phrase None = new("No place for the hose.");

    /// <summary>"Take the hose to 3 places."; without sound advice nobody can say that there is none.</summary>
    public static Phrase Lead(SheetView view) =>
        view.Sheet.Driest.Count is > 0 and var places ? Phrase.Of($"Take the hose to {Phrase.Count(places, "place", "places")}.")
        : view.NoAdvice ? Phrase.Empty
        : None;
}
