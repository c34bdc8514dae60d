using DailyAdjust.Core.Sites;

namespace DailyAdjust.Service.Sites;

/// <summary>A place with nothing on it, for its sun and its clock.</summary>
internal static class BareSite
{
    public static Site At(TimeZoneInfo zone, double latitudeDeg, double longitudeDeg, double elevationM) => new()
    {
        Name = "",
        LatitudeDeg = latitudeDeg,
        LongitudeDeg = longitudeDeg,
        ElevationM = elevationM,
        Clock = new SiteClock(zone),
        Units = UnitSystem.Metric,
        Start = default,
        StartSoil = StartSoil.Assumed,
        Report = new ReportPolicy(),
        Weather = new WeatherSetup { Stations = [], Gauges = [] },
        Soils = new Dictionary<string, Soil>(StringComparer.Ordinal),
        Areas = [],
        Controllers = [],
        Stations = [],
    };
}
