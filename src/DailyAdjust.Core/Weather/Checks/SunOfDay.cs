using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>
/// The sun over a site through one date with its declination held: quick enough to be asked for every value, and near enough for
/// limits (within a minute and 1 % of clear-sky radiation over an hour).
/// </summary>
internal sealed class SunOfDay
{
    private const double SecondsPerMin = 60;
    private const double RadPerTick = 2 * Math.PI / TimeSpan.TicksPerDay;

    private readonly double _sineProduct;
    private readonly double _cosineProduct;
    private readonly double _clearSkyAtZenithWPerM2;

    public SunOfDay(Site site, DateOnly date)
    {
        var sun = Weather.Sun.Day(site, date);
        Noon = sun.Sunrise + ((sun.Sunset - sun.Sunrise) / 2);
        var latitude = Weather.Sun.LatitudeRad(site.LatitudeDeg);
        var declination = Weather.Sun.DeclinationRad(date.DayOfYear);
        _sineProduct = Math.Sin(latitude) * Math.Sin(declination);
        _cosineProduct = Math.Cos(latitude) * Math.Cos(declination);
        var top = Weather.Sun.SolarConstantMJPerM2Min * 1e6 / SecondsPerMin * Weather.Sun.InverseRelativeDistance(date.DayOfYear);
        _clearSkyAtZenithWPerM2 = Radiation.ClearSkyMJPerM2(top, site.ElevationM);
        ExtraterrestrialMJPerM2 = sun.ExtraterrestrialRadiationMJPerM2Day;
        ClearSkyOfDayMJPerM2 = Radiation.ClearSkyMJPerM2(ExtraterrestrialMJPerM2, site.ElevationM);
    }

    /// <summary>Solar noon of the date, UTC.</summary>
    public DateTimeOffset Noon { get; }

    /// <summary>Ra of the whole day, MJ/m².</summary>
    public double ExtraterrestrialMJPerM2 { get; }

    /// <summary>Rso of the whole day, MJ/m². Source: [FAO56] eq. 37, p. 51.</summary>
    public double ClearSkyOfDayMJPerM2 { get; }

    /// <summary>Sine of the sun's elevation, -1 to 1. Source: [FAO56] eqs 28 and 31, p. 47-48.</summary>
    public double SineOfElevation(DateTimeOffset instant) =>
        _sineProduct + (_cosineProduct * Math.Cos((instant - Noon).Ticks * RadPerTick));

    /// <summary>Mean clear-sky radiation of an interval of an hour or less, taken at its middle, W/m². Source: [FAO56] eq. 37, p. 51.</summary>
    public double ClearSkyWPerM2(Reading interval) =>
        _clearSkyAtZenithWPerM2 * Math.Max(0, SineOfElevation(interval.Begin + ((interval.End - interval.Begin) / 2)));
}
