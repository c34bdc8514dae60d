using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Words;

/// <summary>The days and hours of a watering rule.</summary>
internal static class RuleWords
{
    /// <summary>A rule that is against what people want to run today.</summary>
    public static string First(Restriction rule) =>
        $"Watering rule: {rule.Name}. {(rule.MostPercent == 0 ? "It must not run. " : "")}{string.Concat(Times(rule.DaysNotAllowed, rule.HoursNotAllowed).Select(s => s + " "))}Local rules come first.";

    public static IEnumerable<string> Times(WaterDays? days, WateringWindow? hours)
    {
        if (days is not null)
        {
            yield return $"No start {On(days)}.";
        }

        if (hours is not null)
        {
            yield return $"No water from {SiteWords.Clock(hours.Opens)} to {SiteWords.Clock(hours.Closes)}.";
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
