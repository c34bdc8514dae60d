namespace DailyAdjust.Core.Weather;

/// <summary>How a day's reference ET is known. In files written with hyphens: part-estimated.</summary>
public enum EtoBasis
{
    Hourly,
    Daily,
    PartEstimated,
    TemperatureOnly,
    Supplied,
    OtherStation,
    Expected,

    /// <summary>Nothing is known: the day stays open.</summary>
    Open,
}

public enum RainBasis
{
    Measured,
    Logbook,
    Unknown,

    /// <summary>Of the gauge that the site names in its place.</summary>
    Substitute,
}

/// <summary>Rain that fell in an interval, booked at the interval's end (a daily total: at the day's start).</summary>
public readonly record struct RainFall(DateTimeOffset At, double Mm);

/// <summary>One gauge's rain on one day.</summary>
/// <param name="Gauge">Its name.</param>
/// <param name="RainMm">The day's total, mm; null = unknown (counts 0 in the balance, never raises a percentage).</param>
/// <param name="Falls">Intervals with rain, in order of time; empty when unknown.</param>
/// <param name="Basis">How it is known.</param>
/// <param name="MeasuredPartMm">When unknown by itself: what was measured of it all the same, mm.</param>
public sealed record GaugeDay(string Gauge, double? RainMm, IReadOnlyList<RainFall> Falls, RainBasis Basis, double MeasuredPartMm)
{
    /// <summary>The gauge whose rain it is; empty where it is its own.</summary>
    public string Substitute { get; init; } = "";

    /// <summary>Of a finished day that is known: hours of it of which nothing is, at most a tenth.</summary>
    public double MissingH { get; init; }

    /// <summary>Of a day that is still running: a reading of it was set aside, and nobody has said what fell in its time.</summary>
    public bool IsPartAside { get; init; }
}

/// <summary>A reading's value, or several of one quantity that one check found together, that was not used, and why.</summary>
/// <param name="Station">Weather station.</param>
/// <param name="Begin">Interval begin, UTC; of the first value.</param>
/// <param name="What">Quantity and (first) value in words; begins with the quantity's name.</param>
/// <param name="Why">The limit it broke.</param>
public sealed record SetAsideValue(string Station, DateTimeOffset Begin, string What, string Why)
{
    /// <summary>Name of the check that found it; empty in days that were stored before checks had names.</summary>
    public string Check { get; init; } = "";

    /// <summary>How many values of the day, 1 or more.</summary>
    public int Values { get; init; } = 1;

    /// <summary>The quantity's name.</summary>
    public string Quantity => What.Split(' ')[0];
}

/// <summary>A sensor that is doubtful over weeks, though no single value of it was wrong: its values count.</summary>
/// <param name="Check">Name of the check.</param>
/// <param name="Station">Weather station.</param>
/// <param name="Words">What is odd, and what it may come from.</param>
public sealed record SensorDoubt(string Check, string Station, string Words);

/// <summary>One site-local calendar day of weather.</summary>
public sealed record WeatherDay
{
    public required DateOnly Date { get; init; }

    /// <summary>The station that the ETo and temperatures come from; empty when expected or open.</summary>
    public required string Station { get; init; }

    /// <summary>Reference ET, mm, on a grid of 1e-6; null = the day is open.</summary>
    public required double? EtoMm { get; init; }

    public required EtoBasis Basis { get; init; }

    public double? AirTemperatureMaxC { get; init; }

    public double? AirTemperatureMinC { get; init; }

    /// <summary>Inputs that were estimated or interpolated, in plain words, ordinal order ("wind_speed: 2 h interpolated").</summary>
    public IReadOnlyList<string> Estimated { get; init; } = [];

    /// <summary>One per gauge of the site, in the site's order.</summary>
    public required IReadOnlyList<GaugeDay> Rain { get; init; }

    /// <summary>Values of every station that were not used, in the order of the stations and of time.</summary>
    public IReadOnlyList<SetAsideValue> SetAside { get; init; } = [];

    /// <summary>Sensors that are doubtful, in the order of the stations.</summary>
    public IReadOnlyList<SensorDoubt> Doubts { get; init; } = [];

    /// <summary>What the sources used said about their values beside the numbers ("rain: trace counts as 0"), ordinal order.</summary>
    public IReadOnlyList<string> Marks { get; init; } = [];

    /// <summary>The station that helped out for the first; null = the first knew the day, or none did.</summary>
    public StandIn? StandIn { get; init; }

    /// <summary>What later days' checks look back on, in the order of the stations; empty in days stored before there were any.</summary>
    public IReadOnlyList<StationDay> Stations { get; init; } = [];

    public StationDay? StationAt(string station)
    {
        foreach (var day in Stations)
        {
            if (string.Equals(day.Station, station, StringComparison.Ordinal))
            {
                return day;
            }
        }

        return null;
    }

    /// <exception cref="InvalidOperationException">There is no such gauge.</exception>
    public GaugeDay RainAt(string gauge)
    {
        for (var i = 0; i < Rain.Count; i++)
        {
            if (string.Equals(Rain[i].Gauge, gauge, StringComparison.Ordinal))
            {
                return Rain[i];
            }
        }

        throw new InvalidOperationException($"There is no gauge {gauge} on {Date:yyyy-MM-dd}.");
    }
}
