using System.Globalization;
using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Explain;

/// <summary>How a station's day came about, from reference ET to the depletion at its end.</summary>
public static class ZoneDaySteps
{
    /// <summary>The last of the days.</summary>
    /// <param name="inputs">Days up to the one that is explained.</param>
    /// <param name="station">The station.</param>
    /// <returns>Empty = there is no such day.</returns>
    public static IReadOnlyList<Section> Of(BalanceInputs inputs, StationKey station)
    {
        if (Balance.Watch(inputs, station) is not { } watched)
        {
            return [];
        }

        var (day, parts) = watched;
        var walk = new ZoneWalk(parts.Day.Site.Clock, parts.Zone, day.DepletionBeforeMm, namesDates: false);
        return
        [
            new("Root zone and demand", [.. DemandSteps.RootZone(parts.Zone), .. DemandSteps.OfDay(parts.Zone, day.Date, day.EtoMm)]),
            new("Rain", [.. Rain(day, parts)]),
            new("Watering", Watering(parts, walk)),
            new("The day in order of time", Walk(day, parts, walk)),
            new("The balance", [Closing(day)]),
        ];
    }

    private static IEnumerable<Step> Rain(ZoneDay day, ZoneDayParts parts)
    {
        if (day.RainMm is not { } rain)
        {
            yield return Step.Given($"rain of the day: unknown at gauge {parts.Rain.Gauge}, counts", "P", 0, "mm", "");
            yield break;
        }

        yield return Step.Given("rain of the day", "P", rain, "mm", "gauge " + parts.Rain.Gauge);
        yield return Step.Of("rain below this wets only leaves", "Pmin", "0.2 * {ETo}", 0.2 * day.EtoMm, "mm", "[FAO56] ch. 8", new Term("ETo", day.EtoMm));
        yield return Step.Given("of it stayed on leaves", "I", day.InterceptedMm, "mm", "all of it below Pmin, else none");
        if (rain > 0 && day.InterceptedMm == 0 && parts.Zone.Station.Area.Soil.CurveNumber is { } number)
        {
            Term retention = new("S", StormRunoff.RetentionMm(number)), beyond = new("b", Math.Max(0, rain - (0.2 * retention.Value)));
            yield return Step.Of("what the ground can keep", "S", "25400 / {CN} - 254", retention.Value, "mm", "[TR55] eqs 2-1 to 2-4, p. 2-1", new Term("CN", number));
            yield return Step.Of("rain beyond the first that only wets", "b", "max(0, {P} - 0.2 * {S})", beyond.Value, "mm", "[TR55] eqs 2-1 to 2-4, p. 2-1", new("P", rain), retention);
            yield return Step.Of("runoff", "RO", "{b} ^ 2 / ({b} + {S})", day.RunoffMm, "mm", "[TR55] eqs 2-1 to 2-4, p. 2-1", beyond, retention);
        }

        if (rain > 0 && day.InterceptedMm == 0)
        {
            yield return Step.Of(
                "share that reaches the soil", "share", "({P} - {RO}) / {P}", parts.OnZone.SoilShare, "", "of each interval's rain", new("P", rain), new("RO", day.RunoffMm));
        }
    }

    private static List<Step> Watering(ZoneDayParts parts, ZoneWalk walk)
    {
        var (zone, clock) = (parts.Zone, parts.Day.Site.Clock);
        List<Step> steps = [.. WateringSteps.Efficiency(zone.Station)];
        foreach (var start in parts.Day.StartsAt(zone.Station.Key.Controller).Where(s => zone.Station.BaseMinutes.ContainsKey(s.Program.Key.Program)))
        {
            var symbol = FormattableString.Invariant($"net{steps.Count(s => s.Symbol.StartsWith("net", StringComparison.Ordinal)) + 1}");
            steps.AddRange(WateringSteps.Of(parts.Day, start, zone, symbol, string.Create(CultureInfo.InvariantCulture, $"{start.Program.Key} at {clock.ToLocal(start.Start.At):HH:mm}")));
            if (steps[^1] is { Value: { } net } last && string.Equals(last.Symbol, symbol, StringComparison.Ordinal))
            {
                walk.Expect(start.Start.At, net, symbol);
            }
        }

        return steps;
    }

    private static List<Step> Walk(ZoneDay day, ZoneDayParts parts, ZoneWalk walk)
    {
        walk.Steps.Add(Step.Given("below full at 00:00", "Dr", day.DepletionBeforeMm, "mm", "the day before"));
        walk.BeginDay(day.Date, parts.Day.Curve, day.EtoMm * day.K);
        foreach (var e in parts.Events)
        {
            walk.DrawTo(e.DrawnBy, e.At);
            walk.Take(e);
        }

        walk.DrawTo(1, null);
        walk.Steps.Add(Step.Of("below full at the day's end", "Dr", "{Dr}", walk.DepletionMm, "mm", "", walk.Depletion));
        return walk.Steps;
    }

    private static Step Closing(ZoneDay day) => Step.Of(
        "below full at the day's end", "Dr", "{Dr0} + {ETc} - ({P} - {I} - {RO}) - {irrigation} - {hose} + {drained} + {probe}", day.DepletionMm, "mm", "[FAO56] eq. 85",
        new("Dr0", day.DepletionBeforeMm), new("ETc", day.EtcMm), new("P", day.RainMm ?? 0), new("I", day.InterceptedMm), new("RO", day.RunoffMm), new("irrigation", day.IrrigationMm),
        new("hose", day.HoseMm), new("drained", day.DrainageMm), new("probe", day.ProbeMm));
}
