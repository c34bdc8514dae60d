using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Rain that is supposed to be in every gauge by an instant (for stop rules).</summary>
/// <param name="Mm">0 or more.</param>
/// <param name="At">When, UTC.</param>
internal readonly record struct SupposedRain(double Mm, DateTimeOffset At);

/// <summary>What a step of a forecast stands for.</summary>
/// <param name="Date">Its day.</param>
/// <param name="Event">Null = the day's end.</param>
internal readonly record struct ForecastMark(DateOnly Date, WaterEvent? Event);

/// <summary>Lays a zone's days to come out as steps.</summary>
internal static class ForecastBuilder
{
    /// <param name="context">The morning.</param>
    /// <param name="zone">The zone.</param>
    /// <param name="program">The program whose starts are open from the horizon on.</param>
    /// <param name="horizon">Which starts are looked at.</param>
    /// <param name="between">What the program runs at from this morning's round until the horizon opens (later visits only).</param>
    /// <param name="rain">Rain to suppose.</param>
    /// <param name="newSettings">What other programs run at from this morning's round on, where that is decided already.</param>
    /// <param name="marks">Receives what each step stands for; null = nobody asks.</param>
    public static ZoneForecast Build(
        AdviceContext context,
        ZonePlan zone,
        PlannedProgram program,
        Horizon horizon,
        Setting between,
        SupposedRain rain,
        IReadOnlyDictionary<ProgramKey, Setting> newSettings,
        List<ForecastMark>? marks = null)
    {
        var lastStart = horizon.LaterDate ?? (horizon.FirstDateAfter.Count > 0 ? horizon.FirstDateAfter[^1] : horizon.Starts[^1]);
        var (steps, events) = (context.Steps, context.Events);
        steps.Clear();
        var clock = context.Site.Clock;
        var lastDay = clock.DateOf(lastStart.At);
        var slot = 0;
        for (var date = context.Date; date <= lastDay; date = date.AddDays(1))
        {
            var day = context.Day(date);
            events.Clear();
            Gather(events, context, day, zone, program, horizon, between, rain, newSettings);
            WaterEvent.Sort(events);
            var demand = context.DemandMm(zone, date);
            var drawnBy = 0.0;
            var begins = true;
            foreach (var e in events)
            {
                var isOpen = e.Slot >= 0;
                var by = context.ShareDrawn(date, e.DrawnBy);
                steps.Add(new ZoneForecast.Step(begins, demand * (by - drawnBy), e.AmountMm, isOpen ? slot : -1, e.Kind == WaterKind.Probe, slot > horizon.Starts.Count) { GrowsIn = e.GrowsIn });
                slot += isOpen ? 1 : 0;
                drawnBy = Math.Max(drawnBy, by);
                begins = false;
                marks?.Add(new ForecastMark(date, e));
            }

            steps.Add(new ZoneForecast.Step(begins, demand * (1 - drawnBy), 0, -1, IsProbe: false, slot > horizon.Starts.Count));
            marks?.Add(new ForecastMark(date, null));
        }

        var baseMinutes = zone.Station.BaseMinutes[program.Key.Program];
        return new ZoneForecast(zone, baseMinutes, [.. steps], context.DepletionMm[zone.Station.Key], horizon);
    }

    private static void Gather(List<WaterEvent> events, AdviceContext context, DayOfSite day, ZonePlan zone, PlannedProgram program, Horizon horizon, Setting between, SupposedRain rain, IReadOnlyDictionary<ProgramKey, Setting> newSettings)
    {
        if (day.Date == context.Date)
        {
            context.AddKnown(events, zone);
        }

        if (rain.Mm > 0 && context.Site.Clock.DateOf(rain.At) == day.Date)
        {
            events.Add(new WaterEvent(rain.At, WaterKind.Rain, day.ShareBy(rain.At), rain.Mm));
        }

        foreach (var start in day.StartsAt(zone.Station.Key.Controller))
        {
            if (!zone.Station.BaseMinutes.TryGetValue(start.Program.Key.Program, out var baseMinutes))
            {
                continue;
            }

            var own = start.Program.Key == program.Key;
            if (own && horizon.TakenOut.Contains(start.Start))
            {
                continue;
            }

            if (own && start.Start.At >= horizon.Opens)
            {
                // The percentage that is sought is for the program's own starts: what a grow-in that begins after them gives stands.
                events.Add(new WaterEvent(start.Start.At, WaterKind.Irrigation, start.DrawnBy, start.GrowIn is null ? 0 : zone.Net.DepthMm(day.MinutesRun(At(context, start, between), zone, baseMinutes)), Slot: 0) { GrowsIn = start.GrowIn is not null });
                continue;
            }

            var minutes = start.Start.At < context.RoundDone ? day.MinutesRun(start, zone, baseMinutes)
                : own ? DayOfSite.MinutesDue(At(context, start, between), baseMinutes)
                : day.MinutesRun(newSettings.TryGetValue(start.Program.Key, out var setting) ? At(context, start, setting) : start, zone, baseMinutes);
            events.Add(new WaterEvent(start.Start.At, WaterKind.Irrigation, start.DrawnBy, zone.Net.DepthMm(minutes)));
        }
    }

    /// <summary>A start at what this morning's round puts on its program. A grow-in that begins after it runs though the program was left out before.</summary>
    private static DayStart At(AdviceContext context, DayStart start, Setting setting) =>
        setting.IsOff && start.GrowIn?.GrowIn.From > context.RoundDone ? start : start with { Setting = setting };
}
