using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Morning;

/// <summary>Part 11 of the sheet: if nobody visits and no rain falls, after 1, 3 and 7 days.</summary>
internal static class OutlookPart
{
    private static readonly int[] Spans = [1, 3, 7];

    public static IReadOnlyList<Outlook> Of(AdviceContext context, BalanceInputs soFar, bool isSound)
    {
        if (!isSound)
        {
            return [];
        }

        var days = Enumerable.Range(0, Spans[^1]).Select(i => ExpectedDay(context, context.Date.AddDays(i))).ToList();
        var ahead = Balance.Run(soFar with
        {
            Versions = [new SiteVersion(context.Site.Start, context.Site)],
            Weather = days,
            Before = [.. soFar.Before, .. soFar.Weather],
            StartState = new SoilState(context.Date, context.DepletionMm),
            ShareDrawn = context.ShareDrawn,
        });
        var byHand = context.Zones.Where(z => z.Station.Area.ByHand).Select(z => z.Station.Key).ToHashSet();
        var watered = ahead.Days.Where(d => !byHand.Contains(d.Station)).ToList();
        return watered.Count == 0 ? [] : [.. Spans.Select(span => OfSpan(context, watered.Where(d => d.Date < context.Date.AddDays(span)).ToList(), span))];
    }

    private static Outlook OfSpan(AdviceContext context, List<ZoneDay> days, int span)
    {
        var worst = days.MaxBy(d => d.DepletionMm - d.RawMm)!;
        var beyond = worst.DepletionMm - worst.RawMm;
        var station = context.Site.Stations.First(s => s.Key == worst.Station);
        var ground = context.Site.Stations.ToDictionary(s => s.Key, s => s.GroundM2 ?? 1);
        return new Outlook(
            span,
            days.Where(d => d.DepletionMm > d.RawMm).Select(d => d.Station).Distinct().Count(),
            days.Select(d => d.Station).Distinct().Count(),
            beyond > 0 ? station.Label : "",
            Math.Max(0, beyond),
            days.Sum(d => d.DrainageMm * ground[d.Station]) / days.Select(d => d.Station).Distinct().Sum(s => ground[s]));
    }

    private static WeatherDay ExpectedDay(AdviceContext context, DateOnly date) => new()
    {
        Date = date,
        Station = "",
        EtoMm = context.ExpectedEtoMm(date),
        Basis = EtoBasis.Expected,
        Rain = [.. context.Site.Weather.Gauges.Select(g => RainOn(context, g.Id, date))],
    };

    private static GaugeDay RainOn(AdviceContext context, string gauge, DateOnly date)
    {
        var falls = date == context.Date ? context.RainAt(gauge)?.Falls ?? [] : [];
        return new GaugeDay(gauge, falls.Sum(f => f.Mm), falls, RainBasis.Measured, 0);
    }
}
