using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Irrigation;

/// <summary>How a long run is split so that nothing runs off: cycles, and time between them for the surface to dry.</summary>
/// <param name="Cycles">2 or more.</param>
/// <param name="MinutesEach">Of each cycle; at most what the ground takes at once.</param>
/// <param name="SoakMinutes">From the end of one cycle to the beginning of the next.</param>
public sealed record CycleAndSoak(int Cycles, double MinutesEach, double SoakMinutes)
{
    private const double Tolerance = 1e-9;

    /// <summary>
    /// Longest cycle 60 × surface storage / (rate − intake rate); soak until what stands on the surface is taken in, 60 × surface
    /// storage / intake rate. Source: common practice (landscape irrigation handbooks).
    /// </summary>
    /// <param name="station">Its rate and soil.</param>
    /// <param name="minutes">Of one start.</param>
    /// <param name="step">The controller's, minutes: cycles are multiples of it, at least one each; 0 = any length.</param>
    /// <returns>Null where the run may be in one piece, or where nothing may stand on the surface and no split would help.</returns>
    public static CycleAndSoak? Of(Station station, double minutes, double step = 0)
    {
        var soil = station.Area.Soil;
        if (soil.IntakeRate is not { } intake || station.Rate.MmPerHour <= intake.MmPerHour || soil.SurfaceStorage.Mm <= 0)
        {
            return null;
        }

        var longest = NetIrrigation.LongestCycleMinutes(station.Rate.MmPerHour, intake.MmPerHour, soil.SurfaceStorage.Mm);
        if (minutes <= longest + Tolerance)
        {
            return null;
        }

        longest = step > 0 ? Math.Max(Math.Floor((longest / step) + Tolerance) * step, step) : longest;
        var cycles = (int)Math.Ceiling((minutes / longest) - Tolerance);
        var each = step > 0 ? RunMinutes.Up(minutes / cycles, step) : minutes / cycles;
        return new CycleAndSoak(cycles, each, 60 * soil.SurfaceStorage.Mm / intake.MmPerHour);
    }
}
