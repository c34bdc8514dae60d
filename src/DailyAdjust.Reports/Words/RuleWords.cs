using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Words;

/// <summary>The days and hours of a watering rule.</summary>
internal static class RuleWords
{
    /// <summary>A rule that is against what people want to run today.</summary>
    public static Phrase First(Restriction rule) =>
        $"Watering rule: {rule.Name}. {(rule.MostPercent == 0 ? new Phrase("It must not run. ") : Phrase.Empty)}{Phrase.Concat(Times(rule.DaysNotAllowed, rule.HoursNotAllowed).Select(s => Phrase.Of($"{s} ")))}Local rules come first.";

    public static IEnumerable<Phrase> Times(WaterDays? days, WateringWindow? hours)
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

    private static Phrase On(WaterDays days) => days switch
    {
        WaterDays.Weekdays w => $"on {Phrase.List([.. w.Days.Select(DateWords.Weekday)])}",
        WaterDays.OddDays => new("on odd dates"),
        WaterDays.EvenDays => new("on even dates"),
        WaterDays.EveryNth n => $"every {SiteWords.Count(n.Days)} days, counted from {SiteWords.Date(n.From)}",
        _ => new("on any day"),
    };
}
