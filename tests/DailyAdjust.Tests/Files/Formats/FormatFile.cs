using System.Text;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Formats;
using DailyAdjust.Files.Readings;
using DailyAdjust.Tests.Files.Readings;

namespace DailyAdjust.Tests.Files.Formats;

/// <summary>A file of a public format as tests write it, and what is read from it at a site in Chicago.</summary>
internal static class FormatFile
{
    public static WeatherSource Source(string format, string? station = null, string? observedAt = null) => StationFile.Plain with
    {
        Format = format,
        StationCode = station,
        ObservedAt = observedAt is null ? null : TimeOnly.ParseExact(observedAt, "HH:mm", System.Globalization.CultureInfo.InvariantCulture),
        Interval = format is "isd-lite" ? TimeSpan.FromHours(1) : TimeSpan.FromDays(1),
    };

    public static Result Read(string format, string text, string? station = null, string? observedAt = null, SiteClock? clock = null) =>
        Read(Source(format, station, observedAt), Encoding.UTF8.GetBytes(text), clock);

    public static Result Read(WeatherSource source, byte[] bytes, SiteClock? clock = null)
    {
        using var stream = new MemoryStream(bytes);
        var days = new List<ReadingDay>();
        var report = WeatherFileReader.Read("w.txt", stream, source, clock ?? StationFile.Chicago, days.Add);
        return new Result(ReadingMerge.Merge(days.Select(day => day.Readings)), days, report);
    }

    /// <summary>The reading of a calendar day.</summary>
    public static Reading On(this Result result, string date, SiteClock? clock = null) =>
        result.Readings.Single(r => r.Begin == (clock ?? StationFile.Chicago).DayStart(Date(date)) && r.End == (clock ?? StationFile.Chicago).DayEnd(Date(date)));

    /// <summary>"Rain Trace 0 T": what is said beside the numbers.</summary>
    public static IEnumerable<string> Marked(this Reading reading) => reading.Marks.Select(mark => $"{mark.Quantity} {mark.Kind} {mark.Raw}");

    /// <summary>"2:22 Tell": where a problem is and how it begins.</summary>
    public static IEnumerable<(int Line, int Column, string What)> Told(this Result result) => result.Report.Problems.Select(p => (p.Line, p.Column, p.What));

    public static DateOnly Date(string date) => DateOnly.ParseExact(date, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
