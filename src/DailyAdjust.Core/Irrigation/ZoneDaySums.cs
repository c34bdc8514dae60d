using DailyAdjust.Core.Agronomy;

namespace DailyAdjust.Core.Irrigation;

/// <summary>A zone's day added up, mm.</summary>
internal struct ZoneDaySums
{
    public double DrawnMm;
    public double IrrigationMm;
    public double HoseMm;
    public double DrainedMm;
    public double ProbeMm;
    public double ProbeCutMm;

    /// <summary>Null where nobody probed.</summary>
    public ProbeFound? LastProbe;

    /// <summary>In order of time: turf draws up to each event, then the water comes in.</summary>
    /// <param name="soil">The root zone; left as it is at the day's end.</param>
    /// <param name="events">In order.</param>
    /// <param name="demandMm">ETo · K of the day.</param>
    /// <param name="until">The share of the demand at which to stop, f(t); 1 = the whole day. No event lies beyond it.</param>
    public static ZoneDaySums Run(ref RootZone soil, List<WaterEvent> events, double demandMm, double until = 1)
    {
        var sums = new ZoneDaySums();
        soil.BeginDay();
        var drawnBy = 0.0;
        foreach (var e in events)
        {
            sums.DrawnMm += soil.Draw(demandMm * (e.DrawnBy - drawnBy));
            drawnBy = Math.Max(drawnBy, e.DrawnBy);
            sums.Take(ref soil, e);
        }

        sums.DrawnMm += soil.Draw(demandMm * (until - drawnBy));
        return sums;
    }

    private void Take(ref RootZone soil, WaterEvent e)
    {
        switch (e.Kind)
        {
            case WaterKind.Probe:
                var said = soil.DepletionMm;
                var (change, cut) = soil.SetTo(e.AmountMm);
                LastProbe = new ProbeFound(e.At, said, soil.DepletionMm) { CutMm = cut, Earlier = LastProbe };
                ProbeMm += change;
                ProbeCutMm += cut;
                return;
            case WaterKind.Irrigation:
                IrrigationMm += e.AmountMm;
                break;
            case WaterKind.Hose:
                HoseMm += e.AmountMm;
                break;
            default:
                break;
        }

        DrainedMm += soil.Add(e.AmountMm);
    }
}
