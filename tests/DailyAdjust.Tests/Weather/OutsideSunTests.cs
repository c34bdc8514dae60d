using System.Globalization;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

/// <summary>
/// The simple geometry of FAO 56 against an ephemeris, the sun's centre at 0° without refraction. Eq. 24 takes the Earth's path for a
/// circle and a year for 365 days: in spring and autumn its declination is up to 1.1° off. A degree of declination moves sunrise and
/// sunset by 4 minutes times the tangent of the latitude, each its own way; the seasonal correction of solar time adds up to 2 minutes.
/// Refraction and the sun's radius, which the geometry leaves out by design, would make the day 7 to 15 minutes longer.
/// </summary>
public sealed class OutsideSunTests
{
    private const double MostElevationDeg = 1.2;

    [Fact]
    public void Sunrise_sunset_and_day_length_are_within_minutes_of_an_ephemeris()
    {
        var rows = CheckTable.Read("Outside/astronomy-engine/sun.csv");
        Assert.Equal(130, rows.Count);
        Assert.All(rows, row =>
        {
            var date = DateOnly.ParseExact(row["date"], "yyyy-MM-dd", CultureInfo.InvariantCulture);
            var day = Sun.Day(date, row.Number("latitude"), row.Number("longitude"));
            var (rise, set) = (Instant(row["sunrise_utc"]), Instant(row["sunset_utc"]));
            var tangent = Math.Abs(Math.Tan(row.Number("latitude") * Math.PI / 180));
            var most = 2.5 + (4.4 * tangent);
            var mostOfLength = 2 + (2 * 4.4 * tangent);
            Assert.InRange((day.Sunrise - rise).TotalMinutes, -most, most);
            Assert.InRange((day.Sunset - set).TotalMinutes, -most, most);
            Assert.InRange((day.DaylightHours * 60) - (set - rise).TotalMinutes, -mostOfLength, mostOfLength);
        });
    }

    [Fact]
    public void Elevation_in_the_afternoon_is_within_a_degree_of_an_ephemeris()
    {
        Assert.All(CheckTable.Read("Outside/astronomy-engine/sun.csv"), row =>
        {
            var date = DateOnly.ParseExact(row["date"], "yyyy-MM-dd", CultureInfo.InvariantCulture);
            var elevation = Sun.ElevationRad(Instant(row["afternoon_utc"]), row.Number("latitude"), row.Number("longitude"), date.DayOfYear);
            Assert.Equal(row.Number("elevation_deg"), elevation * 180 / Math.PI, MostElevationDeg);
        });
    }

    private static DateTimeOffset Instant(string text) =>
        DateTimeOffset.Parse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal);
}
