using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Index;
using DailyAdjust.Reports.Json;

namespace DailyAdjust.Reports.Words;

/// <summary>What stands at the top of a site's sheet, as the page over all sites says it: what presses first. How it is answered stands on the sheet.</summary>
internal static class WarningWords
{
    public static IReadOnlyList<Warning> Of(IssuedAdvice advice, Site site, SiteWords words)
    {
        var fresh = advice.Freshness;
        var warnings = new List<Warning>();
        if (fresh.NoAdvice is not null)
        {
            warnings.Add(new(FreshnessWords.NoAdviceTitle, $"{FreshnessWords.NoAdvice(fresh)} {FreshnessWords.LeaveDials}"));
        }

        if (advice.StationsByHand > 0)
        {
            warnings.Add(new(ByHandWords.Now, Missed(advice)));
        }

        warnings.AddRange(advice.HandRuns.Select(order => HandRun(order, words)));
        if (advice.BoxesToVerify.Count > 0)
        {
            warnings.Add(new(BoxCheckWords.PowerTitle, Boxes(advice.BoxesToVerify.Select(b => b.Controller), site)));
        }

        if (advice.ClocksToMove.Count > 0)
        {
            warnings.Add(new(new("Clocks to move"), Boxes(advice.ClocksToMove, site)));
        }

        if (advice.StartBoxes.Count > 0)
        {
            warnings.Add(new(RoundWords.StartsTitle, $"{Boxes(advice.StartBoxes, site)} {RoundWords.StartsWithRound}"));
        }

        warnings.AddRange(fresh.UnansweredRounds.Select(round => new Warning(FreshnessWords.NotAnsweredTitle, FreshnessWords.Round(round))));
        warnings.AddRange(FreshnessWords.Confirm(fresh.NeverConfirmed, site, key => SheetView.Label(key, advice.Programs)).Select(box => new Warning(FreshnessWords.NotConfirmedTitle, box.Words)));
        if (fresh.AssumedSoil.Count > 0)
        {
            warnings.Add(new(FreshnessWords.ProbeTitle, FreshnessWords.Probe(fresh.AssumedSoil)));
        }

        warnings.AddRange(FreshnessWords.UnknownByGauge(fresh).Select(days => new Warning(FreshnessWords.RainTitle, FreshnessWords.UnknownRain(days, words))));
        warnings.AddRange(advice.Notices.Select(notice => new Warning(FreshnessWords.FailedTitle, FreshnessWords.Sentence(Phrase.Verbatim(Typed.MarkCommands(notice))))));
        return warnings;
    }

    private static Phrase Missed(IssuedAdvice advice) =>
        $"{Phrase.Count(advice.StationsByHand, "station", "stations")} did not get the night's water and cannot wait: {(advice.ByHand is { } list
            ? $"begun {list.From}, done {list.To}. The list stands on the sheet."
            : new Phrase("none of it can be run now. The sheet says what is left."))}";

    private static Warning HandRun(HandRunJson order, SiteWords words)
    {
        Phrase due = $"{IssuedAdvice.Clock(order.Due)} {words.Day(IssuedAdvice.Day(order.Due))}";
        return new(
            ExceptionWords.ByHand(KindWord.Find(order.Kind) ?? LogKind.WaterIn),
            $"{words.DepthOf(order.DepthMm)} at {order.Where}, {(order.Late ? Phrase.Of($"was due {due} and is not all run by the logbook") : $"by {due}")}.");
    }

    private static Phrase Boxes(IEnumerable<string> controllers, Site site) => $"{Phrase.ListNames(controllers.Select(id => CommonWords.Box(id, site)))}.";
}
