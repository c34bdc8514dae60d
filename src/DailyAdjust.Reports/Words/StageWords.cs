using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>The stage of the drought plan in force, and what each area may run.</summary>
internal static class StageWords
{
    public static IEnumerable<Phrase> Of(StageLine line)
    {
        if (line.Described is not { } stage)
        {
            yield return $"{line.Stage.Name} is in force by the logbook, and site.yaml describes no such stage: it cuts nothing.";
            yield break;
        }

        var most = stage.MostPercent is { } percent ? $" The whole site may run {SiteWords.Percent(percent)} of its base minutes' water." : Phrase.Empty;
        yield return $"{line.Stage.Name} since {SiteWords.Date(line.Stage.First)}.{most}";
        foreach (var times in RuleWords.Times(stage.DaysNotAllowed, stage.HoursNotAllowed))
        {
            yield return times;
        }

        if (stage.CutOrder.Count > 0)
        {
            yield return $"Cut first: {stage.CutOrder.Skip(1).Aggregate(Phrase.Verbatim(stage.CutOrder[0]), (before, next) => $"{before}, then {next}")}.";
        }

        if (line.Ceilings.Count > 0)
        {
            yield return $"At most: {Phrase.Join(", ", line.Ceilings.Select(c => Phrase.Of($"{c.Area} {(c.Percent == 0 ? CommonWords.Off : Phrase.Verbatim(SiteWords.Percent(Math.Floor(c.Percent))))}")))}.";
        }
    }
}
