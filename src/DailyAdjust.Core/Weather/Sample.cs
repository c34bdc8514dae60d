namespace DailyAdjust.Core.Weather;

/// <summary>One known value of one quantity: a mean over its interval (sums are kept as rates per hour).</summary>
internal readonly record struct Sample(DateTimeOffset Begin, DateTimeOffset End, double Value, bool Interpolated)
{
    public TimeSpan Length => End - Begin;

    public DateTimeOffset Middle => Begin + (Length / 2);
}
