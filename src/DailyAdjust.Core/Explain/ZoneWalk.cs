using System.Globalization;
using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Explain;

/// <summary>A root zone while time runs, with every move written down. The moves are those of <see cref="RootZone"/> itself.</summary>
internal sealed class ZoneWalk(SiteClock clock, ZonePlan zone, double depletionMm, bool namesDates)
{
    private readonly Dictionary<(DateTimeOffset At, double Mm), string> _waters = [];
    private RootZone _soil = new(zone.TotalAvailableMm, zone.AllowableMm, depletionMm);
    private DateOnly _date;
    private DrawCurve _curve;
    private DrawSteps? _draw;
    private double _demandMm;
    private double _drawnBy;
    private double? _stress;

    /// <summary>What was written so far.</summary>
    public List<Step> Steps { get; private init; } = [];

    public double DepletionMm => _soil.DepletionMm;

    public Term Depletion => new("Dr", _soil.DepletionMm);

    /// <summary>The same root zone in another future, written to the same steps: the numbers in force are given anew.</summary>
    public ZoneWalk Fork()
    {
        var fork = new ZoneWalk(clock, zone, 0, namesDates) { Steps = Steps, _soil = _soil, _date = _date, _curve = _curve, _demandMm = _demandMm, _drawnBy = _drawnBy, _stress = _stress };
        foreach (var (water, symbol) in _waters)
        {
            fork._waters[water] = symbol;
        }

        Steps.Add(Step.Given("again from before the first start: below full", "Dr", DepletionMm, "mm", "as above"));
        Steps.Add(Step.Given("demand of the day without stress", "D", _demandMm, "mm", "as above"));
        if (_stress is { } stress)
        {
            Steps.Add(Step.Given("stress in force", "Ks", stress, "", "as above"));
        }

        return fork;
    }

    public void BeginDay(DateOnly date, DrawCurve curve, double demandMm)
    {
        (_date, _curve, _draw, _demandMm, _drawnBy, _stress) = (date, curve, null, demandMm, 0, null);
        _soil.BeginDay();
    }

    /// <summary>An equation's number for the water of a start, by which its coming in is then named.</summary>
    public void Expect(DateTimeOffset at, double mm, string symbol) => _waters[(at, mm)] = symbol;

    /// <summary>Turf draws until a share of the day's demand is drawn.</summary>
    /// <param name="drawnBy">f(t).</param>
    /// <param name="at">When; null = the day's end.</param>
    /// <param name="measured">A later look of the day: where the draw curve stands, and what was measured of the day by now.</param>
    public void DrawTo(double drawnBy, DateTimeOffset? at, (double OnCurve, DrawnToday Today)? measured = null)
    {
        var (from, before) = (_drawnBy, Depletion);
        _drawnBy = Math.Max(from, drawnBy);
        if (drawnBy <= from || _demandMm <= 0)
        {
            return;
        }

        var when = at is { } instant ? When(instant) : namesDates ? "the end of " + Words.Date(_date) : "the day's end";
        var onCurve = measured?.OnCurve ?? drawnBy;
        if (at is { } t && (onCurve < 1 || measured is not null))
        {
            _draw ??= new DrawSteps(clock, _date, _curve);
            Steps.AddRange(_draw.Share("share of the day's demand drawn by " + when, "f", onCurve, t));
        }

        if (measured is { } known)
        {
            Steps.Add(Measured(known.OnCurve, known.Today, drawnBy, when));
        }

        Term taw = new("TAW", zone.TotalAvailableMm);
        if (_stress is null)
        {
            _stress = RootZone.StressCoefficient(zone.TotalAvailableMm, zone.AllowableMm, before.Value);
            Steps.Add(before.Value <= zone.AllowableMm
                ? Step.Given("no stress: Dr is within RAW", "Ks", 1, "", "[FAO56] eq. 84")
                : Step.Of("stress", "Ks", "max(0, ({TAW} - {Dr}) / ({TAW} - {RAW}))", _stress.Value, "", "[FAO56] eq. 84", taw, before, new("RAW", zone.AllowableMm)));
        }

        _soil.Draw(_demandMm * (drawnBy - from));
        Steps.Add(Step.Of(
            "below full after the turf drew up to " + when, "Dr", "min({TAW}, {Dr} + {D} * ({to} - {from}) * {Ks})", DepletionMm, "mm", "[FAO56] eq. 85",
            taw, before, new("D", _demandMm), new("to", drawnBy), new("from", from), new("Ks", _stress.Value)));
    }

    /// <summary>What comes in at an instant whose amount stands.</summary>
    public void Take(WaterEvent e)
    {
        var when = When(e.At);
        if (e.Kind == WaterKind.Probe)
        {
            _soil.SetTo(e.AmountMm);
            _stress = null;
            Steps.Add(Step.Of(
                when + ": the probe replaces it", "Dr", "max(0, min({TAW}, {probe}))", DepletionMm, "mm", "(field capacity - reading) x roots",
                new("TAW", zone.TotalAvailableMm), new("probe", e.AmountMm)));
            return;
        }

        var symbol = e.Kind == WaterKind.Irrigation ? _waters.GetValueOrDefault((e.At, e.AmountMm), "water") : "water";
        var what = e.Kind switch { WaterKind.Irrigation => "watering", WaterKind.Hose => "hose", _ => "rain" };
        Take(new Term(symbol, e.AmountMm), $"{when}: {what}");
    }

    /// <summary>Water comes in.</summary>
    public void Take(Term water, string what)
    {
        if (water.Value <= 0)
        {
            return;
        }

        var before = Depletion;
        _soil.Add(water.Value);
        _stress = null;
        Steps.Add(Step.Of($"{what}, the rest drains", "Dr", $"max(0, {{Dr}} - {{{water.Symbol}}})", DepletionMm, "mm", "[FAO56] eqs 85 and 88", before, water));
    }

    private static Step Measured(double onCurve, DrawnToday today, double drawnBy, string when)
    {
        var name = "share of the day's demand drawn by " + when + ", with what was measured of it";
        Term sofar = new("measured", today.SoFarMm), then = new("then", today.ShareThen), whole = new("whole", today.WholeDayMm), ahead = new("ahead", today.RestMm), curve = new("f", onCurve);
        return today.TotalMm <= 0 ? Step.Given(name, "share", drawnBy, "", "draw curve")
            : onCurve <= today.ShareThen
                ? Step.Of(name, "share", "{measured} * {f} / {then} / ({measured} + {ahead})", drawnBy, "", "the curve's shape up to then", sofar, curve, then, ahead)
                : Step.Of(name, "share", "({measured} + {whole} * ({f} - {then})) / ({measured} + {ahead})", drawnBy, "", "the curve's shape from then on", sofar, whole, curve, then, ahead);
    }

    public string When(DateTimeOffset at) =>
        namesDates ? Words.DateAndTime(clock, at).ToString() : clock.ToLocal(at).ToString("HH:mm", CultureInfo.InvariantCulture);
}
