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
            ListFrom = null,
            TracesFrom = null,

            // Gathered for all descriptions of the site, and here only today's counts.
            Settings = soFar.Versions.Count == 1 ? context.Settings : null,
            ShareDrawn = context.ShareDrawn,
        });
        var ground = context.Site.Stations.Where(s => !s.Area.ByHand).ToDictionary(s => s.Key, s => s.GroundM2 ?? 1);
        List<ZoneDay> watered = [.. ahead.Days.Where(d => ground.ContainsKey(d.Station))];
        return watered.Count == 0 ? [] : [.. Spans.Select(span => OfSpan(context, ground, watered, span))];
    }

    private static Outlook OfSpan(AdviceContext context, Dictionary<StationKey, double> ground, List<ZoneDay> watered, int span)
    {
        var end = context.Date.AddDays(span);
        var past = new HashSet<StationKey>();
        var (worst, drained) = (watered[0], 0.0);
        foreach (var day in watered.TakeWhile(d => d.Date < end))
        {
            worst = day.DepletionMm - day.RawMm > worst.DepletionMm - worst.RawMm ? day : worst;
            drained += day.DrainageMm * ground[day.Station];
            if (day.DepletionMm > day.RawMm)
            {
                past.Add(day.Station);
            }
        }

        var beyond = worst.DepletionMm - worst.RawMm;
        return new Outlook(
            span,
            past.Count,
            ground.Count,
            beyond > 0 ? context.Site.Stations.First(s => s.Key == worst.Station).Label : "",
            Math.Max(0, beyond),
            drained / ground.Values.Sum());
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
