using DailyAdjust.Core.Sites;

namespace DailyAdjust.Tests.Plain;

/// <summary>What reaches a zone, in the order in which it counts when it comes at one instant.</summary>
internal enum PlainWhat
{
    Rain,
    Irrigation,
    Hose,
    Probe,
}

/// <summary>Water that reaches the soil at an instant (mm), or a probe reading (the depletion it says, mm).</summary>
internal sealed record PlainEvent(DateTimeOffset At, PlainWhat What, double Mm, int Order = 0, PlainStart? Start = null);

/// <summary>What an event found and left.</summary>
internal sealed record PlainStep(PlainEvent Event, double Before, double After, double Drained);

/// <summary>One zone's day: all its events, and the sums.</summary>
internal sealed record PlainTrace(double End, double Etc, double Drained, double Probe, IReadOnlyList<PlainStep> Steps);

/// <summary>The root zone of one station through one day.</summary>
internal static class PlainSoil
{
    public const double Same = 1e-9;

    /// <param name="depletion">At 00:00, mm.</param>
    /// <param name="area">The ground.</param>
    /// <param name="potential">ETo × K, mm.</param>
    /// <param name="sun">The day's light.</param>
    /// <param name="events">In any order.</param>
    public static PlainTrace Day(double depletion, Area area, double potential, PlainSun sun, IEnumerable<PlainEvent> events)
    {
        var taw = area.TotalAvailableWaterMm;
        var raw = area.AllowableDepletionMm;
        var steps = new List<PlainStep>();
        double drawn = 0, drained = 0, probe = 0;

        var dr = depletion;
        double share = 0;

        // Nothing is drawn before sunrise, so the value after the last water before sunrise is the one when drawing begins.
        var ks = Ks(dr, taw, raw);

        foreach (var e in events.OrderBy(e => e.At).ThenBy(e => e.What).ThenBy(e => e.Order))
        {
            Draw(sun.ShareDrawnBy(e.At));
            var before = dr;
            double excess = 0;
            if (e.What == PlainWhat.Probe)
            {
                dr = Math.Clamp(e.Mm, 0, taw);
                probe += dr - before;
                ks = Ks(dr, taw, raw);
            }
            else if (e.Mm > 0)
            {
                excess = Math.Max(0, e.Mm - dr);
                drained += excess;
                dr = Math.Max(0, dr - e.Mm);
                ks = Ks(dr, taw, raw);
            }

            steps.Add(new(e, before, dr, excess));
        }

        Draw(1);
        return new(dr, drawn, drained, probe, steps);

        void Draw(double shareNow)
        {
            var water = Math.Min(potential * ks * (shareNow - share), taw - dr);
            share = shareNow;
            dr += water;
            drawn += water;
        }
    }

    /// <summary>[FAO56] eq. 84.</summary>
    private static double Ks(double dr, double taw, double raw) => dr <= raw ? 1 : (taw - dr) / (taw - raw);
}
