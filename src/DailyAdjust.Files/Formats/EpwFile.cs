using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>A typical year of hourly weather at a place, for normals only: its months are of different years, and it is nobody's record.</summary>
public sealed record EpwFile
{
    /// <summary>The year that the hours are mapped to: one without a 29 February.</summary>
    public const int NominalYear = 2001;

    /// <summary>Null = the file was refused.</summary>
    public EpwPlace? Place { get; init; }

    /// <summary>One per hour of <see cref="NominalYear"/> in the place's standard time, ascending; those that are missing are left out. Wind is at 10 m.</summary>
    public IReadOnlyList<Reading> Readings { get; init; } = [];

    /// <summary>Counts, and what is wrong.</summary>
    public required ReadingsReport Report { get; init; }
}

/// <summary>Where a typical year was made for.</summary>
/// <param name="Name">City, or what the file calls it.</param>
/// <param name="LatitudeDeg">-90 to 90, north positive.</param>
/// <param name="LongitudeDeg">-180 to 180, east positive.</param>
/// <param name="UtcOffsetH">Of its standard time, hours, -12 to 14.</param>
/// <param name="ElevationM">Above sea level, m, -500 to 9000.</param>
public sealed record EpwPlace(string Name, double LatitudeDeg, double LongitudeDeg, double UtcOffsetH, double ElevationM)
{
    /// <summary>Its standard time all year, by which its hours are counted.</summary>
    public TimeZoneInfo StandardTime() => TimeZoneInfo.CreateCustomTimeZone("standard time", TimeSpan.FromHours(UtcOffsetH), "standard time", "standard time");
}
