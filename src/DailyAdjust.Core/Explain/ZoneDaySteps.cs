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
    public static IReadOnlyList<Section> Of(BalanceInputs inputs, StationKey station) =>
        Balance.Watch(inputs, station) is { } watched
            ? [new("Root zone and demand", [.. Ground(watched.Day, watched.Parts)]), new("Rain", [.. Rain(watched.Day, watched.Parts)]), new("Watering", [.. Watering(watched.Parts)]),
                new("The day in order of time", [.. Walk(watched.Day, watched.Parts)]), new("The balance", [Closing(watched.Day)])]
            : [];

    private static IEnumerable<Step> Ground(ZoneDay day, ZoneDayParts parts)
    {
        var area = parts.Zone.Station.Area;
        yield return Step.Of(
            "total available water", "TAW", "{AW} * {Zr}", day.TawMm, "mm", "[FAO56] eq. 82, p. 162", new("AW", area.Soil.AvailableWaterMmPerM), new("Zr", area.RootDepthM));
        yield return Step.Of("allowable depletion", "RAW", "{p} * {TAW}", day.RawMm, "mm", "[FAO56] eq. 83, p. 162", new("p", area.AllowableDepletion), new("TAW", day.TawMm));
        var span = CropCoefficient.Around(area.Kc, day.Date);
        Term from = new("Ka", span.From), to = new("Kb", span.To), since = new("n", span.DaysSince), days = new("N", span.Days);
        yield return Step.Of(
            string.Create(CultureInfo.InvariantCulture, $"crop coefficient, {span.DaysSince} of {span.Days} days from the 15th to the next 15th"), "Kc", "{Ka} + ({Kb} - {Ka}) * {n} / {N}",
            CropCoefficient.On(area.Kc, day.Date), "", "common practice", from, to, since, days);
        yield return Step.Of("coefficient of the station", "K", "{Kc} * {exposure}", day.K, "", "site description", new("Kc", CropCoefficient.On(area.Kc, day.Date)), new("exposure", parts.Zone.Station.Exposure));
        yield return Step.Of("demand of the day without stress", "D", "{ETo} * {K}", day.EtoMm * day.K, "mm", "[FAO56] ch. 6", new("ETo", day.EtoMm), new("K", day.K));
    }

    private static IEnumerable<Step> Rain(ZoneDay day, ZoneDayParts parts)
    {
        if (day.RainMm is not { } rain)
        {
            yield return Step.Said($"gauge {parts.Rain.Gauge}: unknown, counts 0");
            yield break;
        }

        yield return Step.Given("rain of the day", "P", rain, "mm", "gauge " + parts.Rain.Gauge);
        yield return Step.Of("rain below this wets only leaves", "Pmin", "0.2 * {ETo}", 0.2 * day.EtoMm, "mm", "[FAO56] ch. 8, p. 170", new Term("ETo", day.EtoMm));
        yield return Step.Given("of it stayed on leaves", "I", day.InterceptedMm, "mm", "all of it below Pmin, else none");
        if (rain > 0 && day.InterceptedMm == 0 && parts.Zone.Station.Area.Soil.CurveNumber is { } number)
        {
            Term retention = new("S", StormRunoff.RetentionMm(number)), beyond = new("b", Math.Max(0, rain - (0.2 * retention.Value)));
            yield return Step.Of("what the ground can keep", "S", "25400 / {CN} - 254", retention.Value, "mm", "[TR55] eq. 2-4, p. 2-1", new Term("CN", number));
            yield return Step.Of("rain beyond the first that only wets", "b", "max(0, {P} - 0.2 * {S})", beyond.Value, "mm", "[TR55] eqs 2-2 and 2-3, p. 2-1", new("P", rain), retention);
            yield return Step.Of("runoff", "RO", "{b} ^ 2 / ({b} + {S})", day.RunoffMm, "mm", "[TR55] eq. 2-3, p. 2-1", beyond, retention);
        }

        if (rain > 0 && day.InterceptedMm == 0)
        {
            yield return Step.Of(
                "share that reaches the soil", "share", "({P} - {RO}) / {P}", parts.OnZone.SoilShare, "", "of each interval's rain", new("P", rain), new("RO", day.RunoffMm));
        }
    }

    private static IEnumerable<Step> Watering(ZoneDayParts parts)
    {
        var (zone, clock) = (parts.Zone, parts.Day.Site.Clock);
        foreach (var start in parts.Day.StartsAt(zone.Station.Key.Controller))
        {
            if (!zone.Station.BaseMinutes.TryGetValue(start.Program.Key.Program, out var baseMinutes))
            {
                continue;
            }

            var at = string.Create(CultureInfo.InvariantCulture, $"{start.Program.Key} at {clock.ToLocal(start.Start.At):HH:mm}");
            if (start.Setting.IsOff)
            {
                yield return Step.Said(at + ": off");
                continue;
            }

            var controller = start.Program.Controller;
            Term due = new("due", RunMinutes.At(controller, baseMinutes, start.Setting.Percent)), ran = new("ran", parts.Day.MinutesRun(start, zone, baseMinutes));
            var round = controller.Rounding switch { MinutesRounding.Down => "floor", MinutesRounding.Up => "ceil", _ => "round" };
            yield return Step.Of(
                at + ": minutes of the station", "due", round + "({base} * {setting} / 100 / {step}) * {step}", due.Value, "min", "controller; round = nearest, halves up",
                new("base", baseMinutes), new("setting", start.Setting.Percent), new("step", controller.MinutesStep));
            yield return due.Value > 0
                ? Step.Of("minutes that ran", "ran", "{due} * {percent} / 100", ran.Value, "min", "logbook (ran); 100 where nobody said anything", due, new("percent", 100 * ran.Value / due.Value))
                : Step.Given("minutes that ran", "ran", ran.Value, "min", "");
            yield return NetOf(zone, ran);
        }
    }

    private static Step NetOf(ZonePlan zone, Term ran)
    {
        var station = zone.Station;
        var net = zone.Net.DepthMm(ran.Value);
        Term rate = new("rate", station.Rate.MmPerHour), efficiency = new("eff", station.Area.Efficiency);
        if (zone.Net.RunoffMm(ran.Value) <= 0 || station.Area.Soil.IntakeRate is not { } intake)
        {
            return Step.Of("net depth", "net", "{ran} / 60 * {rate} * {eff}", net, "mm", "common practice", ran, rate, efficiency);
        }

        Term longest = new("cycle", NetIrrigation.LongestCycleMinutes(rate.Value, intake.MmPerHour, station.Area.Soil.SurfaceStorage.Mm));
        return Step.Of(
            "net depth; beyond the longest cycle only what the ground takes in", "net", "({cycle} * {rate} + ({ran} - {cycle}) * {intake}) / 60 * {eff}", net, "mm", "common practice",
            ran, rate, efficiency, longest, new("intake", intake.MmPerHour));
    }

    private static IEnumerable<Step> Walk(ZoneDay day, ZoneDayParts parts)
    {
        var (zone, curve, clock) = (parts.Zone, parts.Day.Curve, parts.Day.Site.Clock);
        var begin = clock.DayStart(day.Date);
        Term rise = new("rise", (curve.Sunrise - begin).TotalHours), set = new("set", (curve.Sunset - begin).TotalHours);
        yield return Step.Given($"sunrise, {clock.ToLocal(curve.Sunrise).ToString("HH:mm:ss", CultureInfo.InvariantCulture)}", "rise", rise.Value, "h since 00:00", "[FAO56] eqs 24, 25, 31-33, p. 46-48");
        yield return Step.Given($"sunset, {clock.ToLocal(curve.Sunset).ToString("HH:mm:ss", CultureInfo.InvariantCulture)}", "set", set.Value, "h since 00:00", "[FAO56] eqs 24, 25, 31-33, p. 46-48");
        yield return Step.Given("missing at 00:00", "Dr", day.DepletionBeforeMm, "mm", "the day before");
        var soil = new RootZone(zone.TotalAvailableMm, zone.AllowableMm, day.DepletionBeforeMm);
        soil.BeginDay();
        var state = new WalkState();
        foreach (var e in parts.Events)
        {
            var when = clock.ToLocal(e.At).ToString("HH:mm", CultureInfo.InvariantCulture);
            if (e.DrawnBy is > 0 and < 1)
            {
                yield return Step.Of(
                    "share of the day's demand drawn by " + when, "f", "(1 - cos(pi * ({t} - {rise}) / ({set} - {rise}))) / 2", e.DrawnBy, "", "common practice", new("t", (e.At - begin).TotalHours), rise, set);
            }

            foreach (var step in Draw(ref soil, ref state, day, e.DrawnBy, when))
            {
                yield return step;
            }

            yield return Take(ref soil, ref state, e, when);
        }

        foreach (var step in Draw(ref soil, ref state, day, 1, "the day's end"))
        {
            yield return step;
        }
    }

    /// <summary>Ks as it is in force, and the share drawn so far.</summary>
    private struct WalkState
    {
        public double? Stress;
        public double DrawnBy;
    }

    private static List<Step> Draw(ref RootZone soil, ref WalkState state, ZoneDay day, double drawnBy, string when)
    {
        List<Step> steps = [];
        var (demand, before, from) = (day.EtoMm * day.K, soil.DepletionMm, state.DrawnBy);
        if (drawnBy > from && demand > 0)
        {
            Term dr = new("Dr", before), taw = new("TAW", day.TawMm);
            if (state.Stress is null)
            {
                state.Stress = RootZone.StressCoefficient(day.TawMm, day.RawMm, before);
                steps.Add(before <= day.RawMm
                    ? Step.Given("no stress: Dr is within RAW", "Ks", 1, "", "[FAO56] ch. 8, p. 169")
                    : Step.Of("stress", "Ks", "max(0, ({TAW} - {Dr}) / ({TAW} - {RAW}))", state.Stress.Value, "", "[FAO56] eq. 84, p. 169", taw, dr, new("RAW", day.RawMm)));
            }

            soil.Draw(demand * (drawnBy - from));
            steps.Add(Step.Of(
                "missing after the turf drew up to " + when, "Dr", "min({TAW}, {Dr} + {D} * ({to} - {from}) * {Ks})", soil.DepletionMm, "mm", "[FAO56] eq. 85, p. 170",
                taw, dr, new("D", demand), new("to", drawnBy), new("from", from), new("Ks", state.Stress.Value)));
        }

        state.DrawnBy = Math.Max(from, drawnBy);
        return steps;
    }

    private static Step Take(ref RootZone soil, ref WalkState state, WaterEvent e, string when)
    {
        Term before = new("Dr", soil.DepletionMm), amount = new(e.Kind == WaterKind.Probe ? "probe" : "water", e.AmountMm), taw = new("TAW", soil.TotalAvailableMm);
        if (e.Kind == WaterKind.Probe)
        {
            soil.SetTo(e.AmountMm);
            state.Stress = null;
            return Step.Of(when + ": the probe replaces it", "Dr", "max(0, min({TAW}, {probe}))", soil.DepletionMm, "mm", "(field capacity - reading) x roots", taw, amount);
        }

        soil.Add(e.AmountMm);
        state.Stress = e.AmountMm > 0 ? null : state.Stress;
        var what = e.Kind switch { WaterKind.Irrigation => "watering", WaterKind.Hose => "hose", _ => "rain" };
        return Step.Of($"{when}: {what}, the rest drains", "Dr", "max(0, {Dr} - {water})", soil.DepletionMm, "mm", "[FAO56] eqs 85 and 88, p. 170-171", before, amount);
    }

    private static Step Closing(ZoneDay day) => Step.Of(
        "missing at the day's end", "Dr", "{Dr0} + {ETc} - ({P} - {I} - {RO}) - {irrigation} - {hose} + {drained} + {probe}", day.DepletionMm, "mm", "[FAO56] eq. 85, p. 170",
        new("Dr0", day.DepletionBeforeMm), new("ETc", day.EtcMm), new("P", day.RainMm ?? 0), new("I", day.InterceptedMm), new("RO", day.RunoffMm), new("irrigation", day.IrrigationMm),
        new("hose", day.HoseMm), new("drained", day.DrainageMm), new("probe", day.ProbeMm));
}
