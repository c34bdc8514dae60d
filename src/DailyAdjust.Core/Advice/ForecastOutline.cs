using System.Runtime.InteropServices;
using DailyAdjust.Core.Agronomy;
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

/// <summary>
/// The days to come as the zones of one program mostly share them: what comes in which order, and which share of a day's demand turf draws in between. A zone's own are its demand and its depths.
/// </summary>
internal sealed class ForecastOutline
{
    private readonly AdviceContext _context;
    private readonly ZonePlan _first;
    private readonly PlannedProgram _program;
    private readonly Horizon _horizon;
    private readonly List<Step> _steps = [];
    private readonly bool _mayHaveHand;
    private readonly Area?[] _areaOf;
    private readonly double[] _kc;

    /// <param name="context">The morning.</param>
    /// <param name="zone">The first zone of those that share it.</param>
    /// <param name="program">The program whose starts are open from the horizon on.</param>
    /// <param name="horizon">Which starts are looked at.</param>
    /// <param name="between">What the program runs at from this morning's round until the horizon opens (later visits only).</param>
    /// <param name="rain">Rain to suppose.</param>
    /// <param name="newSettings">What other programs run at from this morning's round on, where that is decided already.</param>
    public ForecastOutline(
        AdviceContext context, ZonePlan zone, PlannedProgram program, Horizon horizon, Setting between, SupposedRain rain, IReadOnlyDictionary<ProgramKey, Setting> newSettings)
    {
        (_context, _first, _program, _horizon) = (context, zone, program, horizon);
        var lastStart = horizon.LaterDate ?? (horizon.FirstDateAfter.Count > 0 ? horizon.FirstDateAfter[^1] : horizon.Starts[^1]);
        var days = context.Site.Clock.DateOf(lastStart.At).DayNumber - context.Date.DayNumber + 1;
        (_areaOf, _kc) = (new Area?[days], new double[days]);
        _mayHaveHand = context.Day(context.Date).MayHaveHandAt(zone.Station.Key.Controller);
        var events = new OutlineEvents(context, zone, program, horizon, between, rain, newSettings);
        var slot = 0;
        for (var day = 0; day < days; day++)
        {
            var date = context.Date.AddDays(day);
            var drawnBy = 0.0;
            var begins = true;
            foreach (ref readonly var e in events.On(date))
            {
                var isOpen = e.Water.Slot >= 0;
                var by = context.ShareDrawn(date, e.Water.DrawnBy);
                _steps.Add(new Step(day, begins, by - drawnBy, isOpen ? slot : -1, slot > horizon.Starts.Count, e));
                slot += isOpen ? 1 : 0;
                drawnBy = Math.Max(drawnBy, by);
                begins = false;
            }

            _steps.Add(new Step(day, begins, 1 - drawnBy, -1, slot > horizon.Starts.Count, null));
        }
    }

    /// <summary>Whether a zone has the same days to come: what falls and what starts is the same, and nobody brought water by hand, which is a zone's own.</summary>
    public bool Serves(ZonePlan zone)
    {
        if (_mayHaveHand || !string.Equals(zone.Station.Gauge, _first.Station.Gauge, StringComparison.Ordinal) || zone.Programs.Count != _first.Programs.Count)
        {
            return ReferenceEquals(zone, _first);
        }

        for (var i = 0; i < zone.Programs.Count; i++)
        {
            if (!ReferenceEquals(zone.Programs[i].Program, _first.Programs[i].Program))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>A zone's days to come.</summary>
    /// <param name="zone">One that this serves.</param>
    /// <param name="marks">Receives what each step stands for; null = nobody asks.</param>
    public ZoneForecast Of(ZonePlan zone, List<ForecastMark>? marks = null)
    {
        var steps = new ZoneForecast.Step[_steps.Count];
        var (day, demand) = (-1, 0.0);
        var outline = CollectionsMarshal.AsSpan(_steps);
        for (var i = 0; i < steps.Length; i++)
        {
            ref readonly var step = ref outline[i];
            if (step.Day != day)
            {
                (day, demand) = (step.Day, DemandMm(zone, step.Day));
            }

            var amount = step.Event?.AmountMm(zone) ?? 0;
            steps[i] = new ZoneForecast.Step(step.BeginsDay, demand * step.Share, amount, step.Slot, step.Event?.Water.Kind == WaterKind.Probe, step.PastAfter) { GrowsIn = step.Event?.Water.GrowsIn == true };
            marks?.Add(new ForecastMark(_context.Date.AddDays(step.Day), step.Event is { } e ? e.Water with { AmountMm = amount } : null));
        }

        return new ZoneForecast(zone, zone.BaseMinutesIn(_program)!.Value, steps, _context.DepletionMm[zone.Station.Key], _horizon);
    }

    /// <summary>What the weather is expected to ask of a zone on a day, mm; zones of one area have one crop coefficient.</summary>
    private double DemandMm(ZonePlan zone, int day)
    {
        var date = _context.Date.AddDays(day);
        if (!ReferenceEquals(_areaOf[day], zone.Station.Area))
        {
            (_areaOf[day], _kc[day]) = (zone.Station.Area, CropCoefficient.On(zone.Station.Area.Kc, date));
        }

        return _context.ExpectedEtoMm(date) * zone.K(_kc[day]);
    }

    /// <param name="Day">Days after the sheet's date.</param>
    /// <param name="BeginsDay">The first step of its day.</param>
    /// <param name="Share">Of the day's demand, drawn since the step before.</param>
    /// <param name="Slot">Which of the program's open starts it is; -1 = none.</param>
    /// <param name="PastAfter">It comes after the first start behind the horizon.</param>
    /// <param name="Event">Null = the day's end.</param>
    private readonly record struct Step(int Day, bool BeginsDay, double Share, int Slot, bool PastAfter, OutlineEvent? Event);
}
