using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>Where to send the hose, in the sheet's headline.</summary>
internal static class HoseWords
{
    private static readonly Phrase None = new("No place for the hose.");

    /// <summary>The headline: what the round asks for, then the hose.</summary>
    public static Phrase AfterRound(SheetView view) => Phrase.Sentences(RoundWords.Lead(view), Lead(view));

    /// <summary>"Take the hose to 3 places."; without sound advice nobody can say that there is none.</summary>
    private static Phrase Lead(SheetView view) =>
        view.Sheet.Driest.Count is > 0 and var places ? Phrase.Of($"Take the hose to {Phrase.Count(places, "place", "places")}.")
        : view.NoAdvice ? Phrase.Empty
        : None;
}
