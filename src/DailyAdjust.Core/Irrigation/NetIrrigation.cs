using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Irrigation;

/// <summary>
/// What a station's minutes bring into its root zone: rate × efficiency, and beyond the longest cycle without runoff
/// only what the soil takes in. A value made once per station.
/// </summary>
public readonly struct NetIrrigation
{
    private readonly double _mmPerMinute;
    private readonly double _mmPerMinuteBeyond;
    private readonly double _longestCycleMinutes;

    public NetIrrigation(Station station)
    {
        var rate = station.Rate.MmPerHour;
        var efficiency = station.Efficiency;
        _mmPerMinute = rate / 60 * efficiency;
        if (station.Area.Soil.IntakeRate is { } intake && rate > intake.MmPerHour)
        {
            _longestCycleMinutes = LongestCycleMinutes(rate, intake.MmPerHour, station.Area.Soil.SurfaceStorage.Mm);
            _mmPerMinuteBeyond = intake.MmPerHour / 60 * efficiency;
        }
        else
        {
            _longestCycleMinutes = double.PositiveInfinity;
            _mmPerMinuteBeyond = _mmPerMinute;
        }
    }

    /// <summary>Minutes until the surface is full: 60 × surface storage / (rate − intake rate). Source: common practice (landscape irrigation handbooks).</summary>
    /// <param name="rateMmPerHour">Precipitation rate, above the intake rate.</param>
    /// <param name="intakeMmPerHour">Intake rate.</param>
    /// <param name="surfaceStorageMm">Allowable surface accumulation.</param>
    public static double LongestCycleMinutes(double rateMmPerHour, double intakeMmPerHour, double surfaceStorageMm) =>
        60 * surfaceStorageMm / (rateMmPerHour - intakeMmPerHour);

    /// <summary>Net depth of one start, mm.</summary>
    /// <param name="minutes">Minutes run, 0 or more.</param>
    public double DepthMm(double minutes) => minutes <= _longestCycleMinutes
        ? minutes * _mmPerMinute
        : (_longestCycleMinutes * _mmPerMinute) + ((minutes - _longestCycleMinutes) * _mmPerMinuteBeyond);

    /// <summary>What of one start ran off, mm net.</summary>
    public double RunoffMm(double minutes) => (minutes * _mmPerMinute) - DepthMm(minutes);
}
