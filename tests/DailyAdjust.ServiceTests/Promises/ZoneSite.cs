using System.Globalization;
using System.Text;
using DailyAdjust.Service.Home;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>The example course somewhere else on earth, with a weather station that writes a row every half hour and a tenth of a millimetre of rain in each: a day's rain counts its half hours.</summary>
internal static class ZoneSite
{
    /// <param name="home">Its home.</param>
    /// <param name="zone">Its time zone, which is its folder's name too.</param>
    /// <param name="start">When the balance begins.</param>
    /// <param name="reportAt">Report times as in site.yaml.</param>
    public static SiteFolder PutInto(TestHome home, string zone, DateOnly start, string reportAt)
    {
        var site = home.EmptySite(zone.Split('/')[^1].ToLowerInvariant());
        var yaml = File.ReadAllText(Path.Combine(ExampleSite.Folder, "site", "site.yaml"))
            .Replace("latitude: 44.21", Of("latitude", LatitudeOf(zone)), StringComparison.Ordinal)
            .Replace("longitude: -98.32", Of("longitude", LongitudeOf(zone)), StringComparison.Ordinal)
            .Replace("time_zone: America/Chicago", "time_zone: " + zone, StringComparison.Ordinal)
            .Replace("2026-06-01", Text(start), StringComparison.Ordinal)
            .Replace("2026-06-02", Text(start), StringComparison.Ordinal)
            .Replace("at: \"05:00\"", "at: " + reportAt, StringComparison.Ordinal)
            .Replace("clock: local, stamp: end", "clock: utc, stamp: end", StringComparison.Ordinal)
            .Replace("interval: 1 h", "interval: 30 min", StringComparison.Ordinal)
            .Replace("Rain (in)", "Rain (mm)", StringComparison.Ordinal);
        File.WriteAllText(site.SiteFile, yaml);
        File.Copy(Path.Combine(ExampleSite.Folder, "site", "stations.csv"), site.StationsFile);
        return site;
    }

    /// <summary>Rows of every half hour that ends after the first and by the last instant, UTC: a mild year under the zone's sun.</summary>
    public static string Weather(string zone, DateTimeOffset first, DateTimeOffset last)
    {
        var latitude = LatitudeOf(zone) * Math.PI / 180;
        var longitude = LongitudeOf(zone);
        var rows = new StringBuilder("Time,Temp (°F),RH (%),Wind (mph),Solar (W/m²),Rain (mm)\n");
        for (var (end, i) = (first.AddMinutes(30), 1); end <= last; end = end.AddMinutes(30), i++)
        {
            var middle = end.AddMinutes(-15);
            var declination = 0.409 * Math.Sin((Math.Tau * middle.DayOfYear / 365) - 1.39);
            var hourAngle = Math.Tau * (middle.TimeOfDay.TotalHours + (longitude / 15) - 12) / 24;
            var height = Math.Max(0, (Math.Sin(latitude) * Math.Sin(declination)) + (Math.Cos(latitude) * Math.Cos(declination) * Math.Cos(hourAngle)));
            var gust = i * 7919 % 97 / 97.0;
            rows.Append(CultureInfo.InvariantCulture, $"{end:yyyy-MM-dd HH:mm},{50 + (25 * height) + (4 * gust):0.0},{70 - (30 * height) + (10 * gust):0},{2 + (6 * gust):0.0},{700 * height:0},0.1\n");
        }

        return rows.ToString();
    }

    private static double LatitudeOf(string zone) => zone is "Australia/Lord_Howe" or "Pacific/Auckland" or "America/Santiago" ? -34 : 38;

    private static double LongitudeOf(string zone) => TimeZoneInfo.FindSystemTimeZoneById(zone).BaseUtcOffset.TotalHours * 15;

    private static string Of(string key, double degrees) => string.Create(CultureInfo.InvariantCulture, $"{key}: {degrees}");

    private static string Text(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
