namespace DailyAdjust.Core.Agronomy;

/// <summary>
/// The share of a day's ETc that turf has drawn by an instant: nothing before sunrise, half a cosine wave from
/// sunrise to sunset, all of it after sunset. Source: common practice (the shape of the sun's elevation).
/// </summary>
public readonly record struct DrawCurve(DateTimeOffset Sunrise, DateTimeOffset Sunset)
{
    private const double Grid = 1e9;

    /// <summary>f(t), 0 to 1, on a grid of 1e-9 so that processors which differ in the last bits agree.</summary>
    public double ShareBy(DateTimeOffset instant)
    {
        if (instant <= Sunrise)
        {
            return 0;
        }

        if (instant >= Sunset)
        {
            return 1;
        }

        var part = (double)(instant - Sunrise).Ticks / (Sunset - Sunrise).Ticks;
        return Math.Round((1 - Math.Cos(Math.PI * part)) / 2 * Grid, MidpointRounding.AwayFromZero) / Grid;
    }
}
