using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>The sun over one place on one date.</summary>
/// <param name="Sunrise">UTC, on a grid of 1 s; where the sun does not set: 12 h before solar noon; where it does not rise: solar noon.</param>
/// <param name="Sunset">UTC, on a grid of 1 s; likewise 12 h after solar noon, or solar noon.</param>
/// <param name="DaylightHours">0 to 24 h.</param>
/// <param name="ExtraterrestrialRadiationMJPerM2Day">0 or more, MJ/m² per day.</param>
public readonly record struct SunDay(
    DateTimeOffset Sunrise, DateTimeOffset Sunset, double DaylightHours, double ExtraterrestrialRadiationMJPerM2Day);

/// <summary>Where the sun stands, when it rises and sets, and what it sends to the top of the atmosphere. Source: [FAO56] ch. 3, p. 45-49.</summary>
public static class Sun
{
    /// <summary>Source: [FAO56] p. 46.</summary>
    public const double SolarConstantMJPerM2Min = 0.0820;

    /// <summary>Inverse relative distance Earth-Sun, 0.967 to 1.033. Source: [FAO56] eq. 23, p. 46.</summary>
    /// <param name="dayOfYear">1 to 366.</param>
    public static double InverseRelativeDistance(int dayOfYear) =>
        1 + (0.033 * Math.Cos(2 * Math.PI / 365 * OfYear(dayOfYear)));

    /// <summary>Solar declination, rad, -0.409 to 0.409. Source: [FAO56] eq. 24, p. 46.</summary>
    /// <param name="dayOfYear">1 to 366.</param>
    public static double DeclinationRad(int dayOfYear) =>
        0.409 * Math.Sin((2 * Math.PI / 365 * OfYear(dayOfYear)) - 1.39);

    /// <summary>Sunset hour angle, rad, 0 (the sun does not rise) to π (it does not set). Source: [FAO56] eq. 25, p. 46.</summary>
    /// <param name="latitudeDeg">North positive, -90 to 90.</param>
    /// <param name="dayOfYear">1 to 366.</param>
    public static double SunsetHourAngleRad(double latitudeDeg, int dayOfYear) => new SunPath(latitudeDeg, dayOfYear).SunsetRad;

    /// <summary>Daylight hours N, 0 to 24 h. Source: [FAO56] eq. 34, p. 48.</summary>
    /// <param name="latitudeDeg">North positive, -90 to 90.</param>
    /// <param name="dayOfYear">1 to 366.</param>
    public static double DaylightHours(double latitudeDeg, int dayOfYear) =>
        24 / Math.PI * SunsetHourAngleRad(latitudeDeg, dayOfYear);

    /// <summary>Extraterrestrial radiation of a day, MJ/m² per day, 0 or more. Source: [FAO56] eq. 21, p. 46.</summary>
    /// <param name="latitudeDeg">North positive, -90 to 90.</param>
    /// <param name="dayOfYear">1 to 366.</param>
    public static double ExtraterrestrialRadiationMJPerM2Day(double latitudeDeg, int dayOfYear)
    {
        var path = new SunPath(latitudeDeg, dayOfYear);
        return path.RadiationMJPerM2(2 * path.SunsetRad, 2 * path.SunsetSine);
    }

    /// <summary>Seasonal correction for solar time, hours, about -0.24 to 0.27. Source: [FAO56] eqs 32 and 33, p. 48.</summary>
    /// <param name="dayOfYear">1 to 366.</param>
    public static double SeasonalCorrectionH(int dayOfYear)
    {
        var b = 2 * Math.PI * (OfYear(dayOfYear) - 81) / 364;
        return (0.1645 * Math.Sin(2 * b)) - (0.1255 * Math.Cos(b)) - (0.025 * Math.Sin(b));
    }

    /// <summary>
    /// Solar time angle of an instant, rad, -π to π, 0 at solar noon. Source: [FAO56] eq. 31, p. 48, with UTC as the clock
    /// (its standard meridian is 0), so that no time zone comes in.
    /// </summary>
    /// <param name="instant">Any instant.</param>
    /// <param name="longitudeDeg">East positive, -180 to 180.</param>
    /// <param name="dayOfYear">Of the local date, 1 to 366.</param>
    public static double SolarTimeAngleRad(DateTimeOffset instant, double longitudeDeg, int dayOfYear)
    {
        Require.Within(longitudeDeg, -180, 180, nameof(longitudeDeg));
        var solarHour = instant.UtcDateTime.TimeOfDay.TotalHours + (longitudeDeg / 15) + SeasonalCorrectionH(dayOfYear);
        return Math.IEEERemainder(Math.PI / 12 * (solarHour - 12), 2 * Math.PI);
    }

    /// <summary>
    /// Extraterrestrial radiation of an interval, MJ/m², 0 or more: only the part with the sun above the horizon counts.
    /// Source: [FAO56] eqs 28-30, p. 47; [ASCE05] eqs 53-56 for intervals in which the sun rises or sets.
    /// </summary>
    /// <param name="begin">Begin of the interval.</param>
    /// <param name="end">Its end, at most 24 h later.</param>
    /// <param name="latitudeDeg">North positive, -90 to 90.</param>
    /// <param name="longitudeDeg">East positive, -180 to 180.</param>
    /// <param name="dayOfYear">Of the local date, 1 to 366.</param>
    public static double ExtraterrestrialRadiationMJPerM2(
        DateTimeOffset begin, DateTimeOffset end, double latitudeDeg, double longitudeDeg, int dayOfYear)
    {
        var hours = Require.Within((end - begin).TotalHours, 0, 24, nameof(end));
        var first = SolarTimeAngleRad(begin, longitudeDeg, dayOfYear);
        var last = first + (Math.PI / 12 * hours);
        var path = new SunPath(latitudeDeg, dayOfYear);
        var sunset = path.SunsetRad;

        // The interval may reach over midnight into the next turn, where under a midnight sun there is radiation too.
        var sum = 0.0;
        for (var turn = 0; turn <= 1; turn++)
        {
            var noon = 2 * Math.PI * turn;
            var from = Math.Max(first, noon - sunset);
            var to = Math.Min(last, noon + sunset);
            if (to > from)
            {
                sum += path.RadiationMJPerM2(to - from, Math.Sin(to - noon) - Math.Sin(from - noon));
            }
        }

        return sum;
    }

    /// <summary>Elevation of the sun above the horizon, rad, -π/2 to π/2. Source: [ASCE05] eq. 62.</summary>
    /// <param name="instant">Any instant.</param>
    /// <param name="latitudeDeg">North positive, -90 to 90.</param>
    /// <param name="longitudeDeg">East positive, -180 to 180.</param>
    /// <param name="dayOfYear">Of the local date, 1 to 366.</param>
    public static double ElevationRad(DateTimeOffset instant, double latitudeDeg, double longitudeDeg, int dayOfYear)
    {
        var latitude = LatitudeRad(latitudeDeg);
        var declination = DeclinationRad(dayOfYear);
        var sine = (Math.Sin(latitude) * Math.Sin(declination))
            + (Math.Cos(latitude) * Math.Cos(declination) * Math.Cos(SolarTimeAngleRad(instant, longitudeDeg, dayOfYear)));
        return Math.Asin(Math.Clamp(sine, -1, 1));
    }

    /// <summary>
    /// The sun of a date whose solar noon falls on the same date in UTC + longitude / 15 h: right for every zone that keeps within
    /// 12 h of its sun. <see cref="Day(Site, DateOnly)"/> knows the zones across the date line too.
    /// Source: [FAO56] eqs 24, 25 and 31-34, p. 46-48.
    /// </summary>
    /// <param name="date">The local date.</param>
    /// <param name="latitudeDeg">North positive, -90 to 90.</param>
    /// <param name="longitudeDeg">East positive, -180 to 180.</param>
    public static SunDay Day(DateOnly date, double latitudeDeg, double longitudeDeg) =>
        Around(SolarNoon(date, longitudeDeg), date, latitudeDeg);

    /// <summary>The sun of a site's date: the solar noon is the one that the site's clock shows on that date.</summary>
    public static SunDay Day(Site site, DateOnly date)
    {
        var noon = SolarNoon(date, site.LongitudeDeg);
        var shown = site.Clock.DateOf(noon);
        return Around(noon.AddDays(date.DayNumber - shown.DayNumber), date, site.LatitudeDeg);
    }

    private static DateTimeOffset SolarNoon(DateOnly date, double longitudeDeg)
    {
        Require.Within(longitudeDeg, -180, 180, nameof(longitudeDeg));
        var hours = 12 - (longitudeDeg / 15) - SeasonalCorrectionH(date.DayOfYear);
        return new DateTimeOffset(date.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero).AddTicks((long)(hours * TimeSpan.TicksPerHour));
    }

    private static SunDay Around(DateTimeOffset noon, DateOnly date, double latitudeDeg)
    {
        var half = TimeSpan.FromTicks((long)(DaylightHours(latitudeDeg, date.DayOfYear) / 2 * TimeSpan.TicksPerHour));
        return new SunDay(
            ToWholeSecond(noon - half),
            ToWholeSecond(noon + half),
            DaylightHours(latitudeDeg, date.DayOfYear),
            ExtraterrestrialRadiationMJPerM2Day(latitudeDeg, date.DayOfYear));
    }

    /// <summary>Processors differ in the last bits of a sine: a whole second hides them.</summary>
    private static DateTimeOffset ToWholeSecond(DateTimeOffset instant)
    {
        var ticks = instant.Ticks + (TimeSpan.TicksPerSecond / 2);
        return new DateTimeOffset(ticks - (ticks % TimeSpan.TicksPerSecond), TimeSpan.Zero);
    }

    internal static double LatitudeRad(double latitudeDeg) =>
        Math.PI / 180 * Require.Within(latitudeDeg, -90, 90, nameof(latitudeDeg));

    internal static int OfYear(int dayOfYear) => (int)Require.Within(dayOfYear, 1, 366, nameof(dayOfYear));
}
