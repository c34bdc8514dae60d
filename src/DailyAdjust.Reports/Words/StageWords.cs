using DailyAdjust.Core.Morning;

namespace DailyAdjust.Reports.Words;

/// <summary>The stage of the drought plan in force, and what each area may run.</summary>
internal static class StageWords
{
    public static IEnumerable<string> Of(StageLine line)
    {
        if (line.Described is not { } stage)
        {
            yield return $"{line.Stage.Name} is in force by the logbook, and site.yaml describes no such stage: it cuts nothing.";
            yield break;
        }

        var most = stage.MostPercent is { } percent ? $" The whole site may run {SiteWords.Percent(percent)} of its base minutes' water." : "";
        yield return $"{line.Stage.Name} since {SiteWords.Date(line.Stage.First)}.{most}";
        foreach (var times in RuleWords.Times(stage.DaysNotAllowed, stage.HoursNotAllowed))
        {
            yield return times;
        }

        if (stage.CutOrder.Count > 0)
        {
            yield return $"Cut first: {string.Join(", then ", stage.CutOrder)}.";
        }

        if (line.Ceilings.Count > 0)
        {
            yield return $"At most: {string.Join(", ", line.Ceilings.Select(c => $"{c.Area} {(c.Percent == 0 ? CommonWords.Off : SiteWords.Percent(Math.Floor(c.Percent)))}"))}.";
        }
    }
}
