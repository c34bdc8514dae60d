using System.Globalization;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Tests.Plain;

/// <summary>The example site's weather (ETo as expected, rain by the hour) and logbook.</summary>
internal static class ExampleInputs
{
    public static DateOnly First { get; } = new(2026, 6, 1);

    public static DateOnly Last { get; } = new(2026, 6, 17);

    public static IReadOnlyList<WeatherDay> Weather()
    {
        var falls = RainByHour();
        return [.. Rows("expected-weather.csv").Select(cells =>
        {
            var date = DateOnly.ParseExact(cells[0], "yyyy-MM-dd", CultureInfo.InvariantCulture);
            return new WeatherDay
            {
                Date = date,
                Station = "yard",
                EtoMm = Number(cells[2]),
                Basis = EtoBasis.Hourly,
                Rain = [Gauge(falls[date])],
            };
        })];
    }

    public static MorningInputs Morning(DateOnly date)
    {
        var site = ExampleSite.Build();
        var asOf = site.Clock.ToInstant(date, site.Report.At[0]);
        return new MorningInputs
        {
            Versions = [new SiteVersion(site.Start, site)],
            Date = date,
            AsOf = asOf,
            Weather = [.. Weather().Where(w => w.Date < date)],
            RainSinceMidnight = [Gauge([.. RainByHour()[date].Where(f => f.At <= asOf)])],
            NewestReadingEnd = asOf,
            Log = [.. Log().Where(e => e.Time.Instant(site.Clock) <= asOf)],
        };
    }

    public static IReadOnlyList<LogEntry> Log() => [.. Rows("logbook.csv").Select(cells =>
    {
        var time = DateTime.ParseExact(cells[0], "yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
        var inches = cells[4].Is("in");
        return new LogEntry
        {
            Time = new(DateOnly.FromDateTime(time), TimeOnly.FromDateTime(time)),
            Kind = Enum.Parse<LogKind>(cells[1], ignoreCase: true),
            Where = Where(cells[2]),
            Value = cells[3].Length == 0 ? null : Number(cells[3]) * (inches ? 25.4 : 1),
            Unit = cells[4] switch { "%" => LogUnit.Percent, "min" => LogUnit.Minutes, "in" => LogUnit.Mm, _ => LogUnit.None },
            Note = cells[7],
        };
    })];

    public static IEnumerable<string[]> Rows(string file) =>
        File.ReadLines(ExampleSite.DataFile(file)).Skip(1).Where(l => l.Length > 0).Select(l => l.Split(','));

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static Place Where(string text)
    {
        var parts = text.Split('/');
        return new(parts[1].StartsWith('P') ? PlaceKind.Program : PlaceKind.Station, parts[0], parts[1]);
    }

    private static GaugeDay Gauge(IReadOnlyList<RainFall> falls) => new("yard", falls.Sum(f => f.Mm), falls, RainBasis.Measured, 0);

    private static Dictionary<DateOnly, IReadOnlyList<RainFall>> RainByHour() => Rows("yard-hourly.csv")
        .Select(cells =>
        {
            var end = DateTime.ParseExact(cells[0], "yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
            var at = ExampleSite.Clock.ToInstant(DateOnly.FromDateTime(end), TimeOnly.FromDateTime(end));
            return (Date: DateOnly.FromDateTime(end.AddHours(-1)), Fall: new RainFall(at, Number(cells[5]) * 25.4));
        })
        .GroupBy(x => x.Date)
        .ToDictionary(g => g.Key, g => (IReadOnlyList<RainFall>)[.. g.Select(x => x.Fall).Where(f => f.Mm > 0)]);
}
