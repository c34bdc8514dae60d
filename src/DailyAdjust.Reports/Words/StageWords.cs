using System.Globalization;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;

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
        if (stage.DaysNotAllowed is { } days)
        {
            yield return $"No start {On(days)}.";
        }

        if (stage.HoursNotAllowed is { } hours)
        {
            yield return $"No start from {SiteWords.Clock(hours.Opens)} to {SiteWords.Clock(hours.Closes)}.";
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

    private static string On(WaterDays days) => days switch
    {
        WaterDays.Weekdays w => "on " + CommonWords.List([.. w.Days.Select(d => CultureInfo.InvariantCulture.DateTimeFormat.GetAbbreviatedDayName(d))]),
        WaterDays.OddDays => "on odd dates",
        WaterDays.EvenDays => "on even dates",
        WaterDays.EveryNth n => $"every {SiteWords.Count(n.Days)} days, counted from {SiteWords.Date(n.From)}",
        _ => "on any day",
    };
}
