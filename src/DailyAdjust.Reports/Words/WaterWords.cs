using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Water;

namespace DailyAdjust.Reports.Words;

/// <summary>Water used.</summary>
internal static class WaterWords
{
    public static readonly Phrase Estimated = new("estimated");
    public static readonly Phrase Metered = new("metered");
    public static readonly Phrase Yesterday = new("yesterday");
    public static readonly Phrase Month = new("this month");
    public static readonly Phrase Season = new("this season");
    public static readonly Phrase NotRead = new("not read");
    public static readonly Phrase PassedTitle = new("Water limits passed");

    /// <summary>"permit, 30,000 gal a day: on 5 days since 15 April", for each limit that was passed this season.</summary>
    public static IEnumerable<Phrase> Passed(WaterUsed water, SiteWords words) =>
        water.SeasonFrom is not { } first ? [] : water.Limits.Where(l => l.Over > 0).Select(l => Passed(l, words.Volume(l.Limit), first));

    private static Phrase Passed(LimitUse use, string limit, DateOnly first) => use.Kind switch
    {
        LimitKind.Allotment => $"allotment, {limit} since {SiteWords.DayMonth(use.From)} {use.From.Year}",
        LimitKind.Year => $"permit, {limit} a year since {SiteWords.DayMonth(use.From)} {use.From.Year}",
        LimitKind.Month => $"permit, {limit} a month: in {Phrase.Count(use.Over, "month", "months")} since {SiteWords.DayMonth(first)}",
        LimitKind.Day => $"permit, {limit} a day: on {Phrase.Count(use.Over, "day", "days")} since {SiteWords.DayMonth(first)}",
        _ => throw new ArgumentOutOfRangeException(nameof(use), use.Kind, "Not a limit of a volume."),
    };

    /// <summary>The readings between which the meter counted: "30 Jun to 13 Jul".</summary>
    public static Phrase Span(MeteredWater metered) => $"{SiteWords.DayShortMonth(metered.From)} to {SiteWords.DayShortMonth(metered.To)}";

    public static Phrase HowEstimated(int stationsWithoutFlow) =>
        Phrase.Sentences(new("Estimated from minutes and the flow in stations.csv."), stationsWithoutFlow switch
        {
            0 => Phrase.Empty,
            1 => new("1 station has no flow there and is not in it."),
            _ => $"{SiteWords.Count(stationsWithoutFlow)} stations have no flow there and are not in it.",
        });
}
