using System.Text;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Tests.Files.Readings;

/// <summary>A station's file as tests write it, and what is read from it.</summary>
internal static class StationFile
{
    public static readonly SiteClock Chicago = Clock("America/Chicago");

    /// <summary>Temperature, wind and rain by the hour: the plainest file there is.</summary>
    public static readonly WeatherSource Plain = new()
    {
        Id = "yard",
        Files = "yard-*.csv",
        Format = "csv",
        Time = new TimeColumn("Time", null, "yyyy-MM-dd HH:mm", StampClock.Local, StampMeaning.End),
        Interval = TimeSpan.FromHours(1),
        Columns = new Dictionary<WeatherQuantity, MappedColumn>
        {
            [WeatherQuantity.AirTemperature] = new("Temp (°C)", null),
            [WeatherQuantity.WindSpeed] = new("Wind (m/s)", null),
            [WeatherQuantity.Rain] = new("Rain (mm)", null),
        },
    };

    public const string PlainHeader = "Time,Temp (°C),Wind (m/s),Rain (mm)\n";

    public static SiteClock Clock(string zone) => new(TimeZoneInfo.FindSystemTimeZoneById(zone));

    public static Result Read(string text, WeatherSource? source = null, SiteClock? clock = null) =>
        Read(Encoding.UTF8.GetBytes(text), source, clock);

    public static Result Read(byte[] bytes, WeatherSource? source = null, SiteClock? clock = null)
    {
        using var stream = new MemoryStream(bytes);
        var days = new List<ReadingDay>();
        var report = StationCsvReader.Read("yard-1.csv", stream, source ?? Plain, clock ?? Chicago, days.Add);
        return new Result(ReadingMerge.Merge(days.Select(day => day.Readings)), days, report);
    }

    public static string Path(string name) => System.IO.Path.Combine(AppContext.BaseDirectory, "Data", name);
}

/// <param name="Readings">All, one per interval, ascending.</param>
/// <param name="Days">As handed out.</param>
internal sealed record Result(IReadOnlyList<Reading> Readings, IReadOnlyList<ReadingDay> Days, ReadingsReport Report)
{
    public (int Read, int SetAside, int Refused) Counts => (Report.RowsRead, Report.RowsSetAside, Report.RowsRefused);
}
