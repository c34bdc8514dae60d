using DailyAdjust.Core.Sites;
using DailyAdjust.Fuzz.Checks;
using DailyAdjust.Tests.Files.Readings;

namespace DailyAdjust.Fuzz.Targets;

/// <summary>A station's table by a column map, both made at random, so that most do not fit.</summary>
internal sealed class ColumnMapTarget() : Target("column map", 12, [.. Samples.Weather.Select(Bytes), Bytes(StationFile.PlainHeader + "2026-06-01 01:00,20.1,1.5,0.00\n2026-06-01 02:00,19.8,1.2,0.25\n")])
{
    private static readonly string[] Patterns = ["yyyy-MM-dd HH:mm", "yyyy-MM-dd", "M/d/yyyy H:mm", "dd.MM.yyyy HH:mm", "yyyy-MM-dd'T'HH:mm:sszzz", "epoch", "MM/dd/yyyy hh:mm tt"];
    private static readonly string[] Marks = ["-999", "M", "---", "0", ""];
    private static readonly WeatherQuantity[] Quantities = Enum.GetValues<WeatherQuantity>();
    private static readonly string[] Headers = [.. Samples.Weather.SelectMany(text => text.Split('\n')[0].Split(',')).Select(cell => cell.Trim()).Distinct(StringComparer.Ordinal)];
    private static readonly TimeSpan[] Intervals = [TimeSpan.FromHours(1), TimeSpan.FromDays(1), TimeSpan.FromMinutes(1), TimeSpan.FromMinutes(15)];
    private static readonly WeatherSource[] Described = [.. Samples.Courses.SelectMany(c => c.Site.Weather.Stations)];

    public override void Try(byte[] bytes, Random random)
    {
        var clock = WeatherFile.Clock(random);
        var source = random.Next(3) > 0 ? Described[random.Next(Described.Length)] : Map(random);
        var read = WeatherFile.Read(source, bytes, clock);
        Hold.Same(read, WeatherFile.Read(source, bytes, clock));
        WeatherFile.Check(read, WeatherFile.Text(bytes), clock);
    }

    private static WeatherSource Map(Random random) => StationFile.Plain with
    {
        Time = new TimeColumn(OneOf(Headers, random), random.Next(6) == 0 ? OneOf(Headers, random) : null, OneOf(Patterns, random), OneOf(Enum.GetValues<StampClock>(), random), OneOf(Enum.GetValues<StampMeaning>(), random)),
        Interval = OneOf(Intervals, random),
        Missing = [OneOf(Marks, random)],
        Delimiter = random.Next(3) == 0 ? OneOf([',', ';', '\t', ' '], random) : null,
        DecimalComma = random.Next(4) == 0,
        UnitsBelow = random.Next(6) == 0,
        Columns = Enumerable.Range(0, random.Next(1, 5)).Select(_ => OneOf(Quantities, random)).Distinct()
            .ToDictionary(q => q, q => new MappedColumn(OneOf(Headers, random), random.Next(2) == 0 ? OneOf(["mm", "in", "degC", "degF", "%", "mph", "W/m2", "h", "MJ/m2"], random) : null, q == WeatherQuantity.Rain && random.Next(3) == 0)),
    };

    private static T OneOf<T>(IReadOnlyList<T> items, Random random) => items[random.Next(items.Count)];
}
