using DailyAdjust.Core.Sites;

namespace DailyAdjust.Tests.Plain;

/// <summary>Sunrise and sunset of a site's date, and the share of the day's ETc drawn by an instant.</summary>
internal sealed record PlainSun(DateTimeOffset Sunrise, DateTimeOffset Sunset, DateTimeOffset DayEnd)
{
    public static PlainSun Of(Site site, DateOnly date)
    {
        var latitude = site.LatitudeDeg * Math.PI / 180;
        var day = date.DayOfYear;

        // [FAO56] eq. 24: declination; eq. 25: hour angle of sunset.
        var declination = 0.409 * Math.Sin((2 * Math.PI * day / 365) - 1.39);
        var hourAngle = Math.Acos(Math.Clamp(-Math.Tan(latitude) * Math.Tan(declination), -1, 1));

        // [FAO56] eqs 32, 33: the seasonal correction of solar time, hours.
        var b = 2 * Math.PI * (day - 81) / 364;
        var correction = (0.1645 * Math.Sin(2 * b)) - (0.1255 * Math.Cos(b)) - (0.025 * Math.Sin(b));

        // [FAO56] eq. 31 at hour angle 0, with the zone's meridian at Greenwich: the time of solar noon, UTC.
        var noonUtcH = 12 - correction - (site.LongitudeDeg / 15);
        var noon = new DateTimeOffset(date.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero).AddHours(noonUtcH);

        // The noon of this date is the one that the site's own clock shows on it (zones near the date line).
        while (site.Clock.DateOf(noon) < date)
        {
            noon = noon.AddDays(1);
        }

        while (site.Clock.DateOf(noon) > date)
        {
            noon = noon.AddDays(-1);
        }

        var halfDayH = 12 * hourAngle / Math.PI;
        return new(WholeSecond(noon.AddHours(-halfDayH)), WholeSecond(noon.AddHours(halfDayH)), site.Clock.DayEnd(date));
    }

    /// <summary>f(t): 0 before sunrise, 1 after sunset and at the day's end.</summary>
    public double ShareDrawnBy(DateTimeOffset t)
    {
        if (t >= DayEnd || t >= Sunset)
        {
            return 1;
        }

        if (t <= Sunrise)
        {
            return 0;
        }

        var part = (t - Sunrise).TotalSeconds / (Sunset - Sunrise).TotalSeconds;
        return Math.Round((1 - Math.Cos(Math.PI * part)) / 2, 9);
    }

    private static DateTimeOffset WholeSecond(DateTimeOffset t)
    {
        var seconds = (t.Ticks + (TimeSpan.TicksPerSecond / 2)) / TimeSpan.TicksPerSecond;
        return new DateTimeOffset(seconds * TimeSpan.TicksPerSecond, TimeSpan.Zero);
    }
}
