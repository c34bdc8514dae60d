using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
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

    /// <inheritdoc cref="Run(ref RootZone, ReadOnlySpan{WaterEvent}, double, double)"/>
    public static ZoneDaySums Run(ref RootZone soil, List<WaterEvent> events, double demandMm, double until = 1) =>
        Run(ref soil, CollectionsMarshal.AsSpan(events), demandMm, until);

    /// <summary>In order of time: turf draws up to each event, then the water comes in.</summary>
    /// <param name="soil">The root zone; left as it is at the day's end.</param>
    /// <param name="events">In order.</param>
    /// <param name="demandMm">ETo · K of the day.</param>
    /// <param name="until">The share of the demand at which to stop, f(t); 1 = the whole day. No event lies beyond it.</param>
    public static ZoneDaySums Run(ref RootZone soil, ReadOnlySpan<WaterEvent> events, double demandMm, double until = 1)
    {
        // A year of a large course is half a million of these: what every event touches is local, so that it stays in registers.
        var ground = soil;
        var sums = new ZoneDaySums();
        double drawn = 0, irrigation = 0, drained = 0, drawnBy = 0;
        ground.BeginDay();
        foreach (ref readonly var e in events)
        {
            drawn += ground.Draw(demandMm * (e.DrawnBy - drawnBy));
            if (e.DrawnBy > drawnBy)
            {
                drawnBy = e.DrawnBy;
            }

            if (e.Kind == WaterKind.Irrigation)
            {
                irrigation += e.AmountMm;
            }
            else if (e.Kind != WaterKind.Rain)
            {
                if (e.Kind == WaterKind.Probe)
                {
                    var probed = ground;
                    sums.TakeProbe(ref probed, e);
                    ground = probed;
                    continue;
                }

                sums.HoseMm += e.AmountMm;
            }

            drained += ground.Add(e.AmountMm);
        }

        sums.DrawnMm = drawn + ground.Draw(demandMm * (until - drawnBy));
        sums.IrrigationMm = irrigation;
        sums.DrainedMm = drained;
        soil = ground;
        return sums;
    }

    // Rare, and out of the way of the loop.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void TakeProbe(ref RootZone soil, in WaterEvent e)
    {
        var said = soil.DepletionMm;
        var (change, cut) = soil.SetTo(e.AmountMm);
        LastProbe = new ProbeFound(e.At, said, soil.DepletionMm) { CutMm = cut, Earlier = LastProbe };
        ProbeMm += change;
        ProbeCutMm += cut;
    }
}
