using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>Where a station stands that helped out for the first.</summary>
/// <param name="Station">Its id.</param>
/// <param name="DistanceM">From the site, along the ground, m; null = the site description does not say where it stands.</param>
/// <param name="HigherM">Than the site, m, below 0 where it lies lower; null = not said.</param>
public sealed record StandIn(string Station, double? DistanceM, double? HigherM)
{
    /// <summary>Mean radius of the earth, m. Common practice.</summary>
    private const double EarthRadiusM = 6_371_000;

    internal static StandIn Of(Site site, WeatherSource source) => new(
        source.Id,
        source is { LatitudeDeg: { } latitude, LongitudeDeg: { } longitude }
            ? Math.Round(GreatCircleM(site.LatitudeDeg, site.LongitudeDeg, latitude, longitude))
            : null,
        source.ElevationM - site.ElevationM);

    /// <summary>Between two places along a great circle (haversine formula), m. Source: common practice.</summary>
    internal static double GreatCircleM(double latitudeDeg, double longitudeDeg, double toLatitudeDeg, double toLongitudeDeg)
    {
        var (a, b) = (Sun.LatitudeRad(latitudeDeg), Sun.LatitudeRad(toLatitudeDeg));
        var north = Math.Sin((b - a) / 2);
        var east = Math.Sin(Math.PI / 180 * (toLongitudeDeg - longitudeDeg) / 2);
        var h = (north * north) + (Math.Cos(a) * Math.Cos(b) * east * east);
        return 2 * EarthRadiusM * Math.Asin(Math.Sqrt(Math.Min(1, h)));
    }
}
