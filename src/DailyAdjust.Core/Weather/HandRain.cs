namespace DailyAdjust.Core.Weather;

/// <summary>Rain that somebody read off a gauge: the time that it is booked to, and what becomes of the instrument in it.</summary>
/// <param name="Gauge">Its name.</param>
/// <param name="From">Begin of its time, UTC.</param>
/// <param name="To">Its end, UTC; of a date's total the end of that date, which may lie ahead.</param>
/// <param name="Mm">What was read, mm.</param>
/// <param name="BookedTo">The date whose rain it is: the one in which it begins.</param>
public sealed record HandRain(string Gauge, DateTimeOffset From, DateTimeOffset To, double Mm, DateOnly BookedTo)
{
    /// <summary>The total of a date; otherwise what fell since the gauge's last entry, at most 24 hours back.</summary>
    public bool IsWholeDate { get; init; }

    /// <summary>False: the total of its date by hand counts in its place.</summary>
    public bool Counts { get; init; } = true;

    /// <summary>The date after <see cref="BookedTo"/> whose total by hand holds a part of the same hours; null = none.</summary>
    public DateOnly? InTotalOf { get; init; }

    /// <summary>The weather station that the gauge belongs to; empty = it is read by hand only.</summary>
    public string Station { get; init; } = "";

    /// <summary>What the instrument measured in that time, mm; null = it knows nothing of it.</summary>
    public double? InstrumentMm { get; init; }

    /// <summary>How much of that time, as far as it is over, the instrument knows nothing of.</summary>
    public TimeSpan InstrumentMissing { get; init; }
}
