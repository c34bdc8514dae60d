using System.Globalization;
using System.Text;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>
/// One invented March at Chicago's clock (which goes forward on the 8th) in eight formats, clocks and units, each a site of its own in one home, through the
/// real program: the same days of weather to the rounding of the format. Rain falls from noon to 16:00, the extremes are at 6 and 15 h of the
/// local clock: days in standard time and in UTC have the same of them.
/// </summary>
public sealed class OneMonthEightWaysTests : IDisposable
{
    private static readonly DateOnly First = new(2026, 3, 1);
    private static readonly DateOnly Last = new(2026, 3, 31);
    private static readonly TimeZoneInfo Chicago = TimeZoneInfo.FindSystemTimeZoneById("America/Chicago");
    private static readonly TimeSpan Standard = TimeSpan.FromHours(-6);
    private static readonly List<Hour> Truth = [.. Hours()];

    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void The_same_month_in_eight_formats_gives_the_same_days()
    {
        Way[] ways =
        [
            // Metric, as the truth has it; what the others are held against.
            Csv("plain", "Time,T (°C),RH (%),U (m/s),Rs (W/m²),P (mm)", "yyyy-MM-dd HH:mm", "utc", "start", 60, "", 1e-9, 1e-9, 1e-9, (h, _) =>
                $"{h.Begin.UtcDateTime:yyyy-MM-dd HH:mm},{h.TemperatureC},{h.HumidityPercent},{h.WindMPerS},{h.SunWPerM2},{h.RainMm}"),
            Csv("us", "Time,T (°F),RH (%),U (mph),Rs (ly),P (in)", "M/d/yyyy h:mm tt", "standard", "end", 60, "", 0.03, 0.06, 0.02, (h, _) =>
                $"{h.End.ToOffset(Standard):M/d/yyyy h:mm tt},{(h.TemperatureC * 1.8) + 32:0.0},{h.HumidityPercent},{h.WindMPerS / 0.44704:0.00},{h.SunWPerM2 * 3600 / 41840:0.000},{h.RainMm / 25.4:0.000}"),
            Csv("comma", "Zeit;T (°C);RH (%);U (km/h);Rs (MJ/m²);P (mm)", "dd.MM.yyyy HH:mm", "standard", "start", 60, "decimal: comma", 0.001, 0.03, 0.01, (h, _) =>
                $"{h.Begin.ToOffset(Standard):dd.MM.yyyy HH:mm};{Comma(h.TemperatureC, "0.0")};{h.HumidityPercent};{Comma(h.WindMPerS * 3.6, "0.00")};{Comma(h.SunWPerM2 * 0.0036, "0.0000")};{Comma(h.RainMm, "0.00")}"),
            Csv("counter", "Time,T,RH,U,Rs,P\n,°C,%,m/s,W/m²,mm", "epoch", "utc", "end", 10, "units_below: true", 0.001, 0.03, 0.02, (h, total) =>
                $"{h.End.ToUnixTimeSeconds()},{h.TemperatureC},{h.HumidityPercent},{h.WindMPerS},{h.SunWPerM2},{total:0.00}"),
            new("daily", """format: csv, interval: 1 d, time: { column: Date, pattern: "yyyy-MM-dd", clock: local, stamp: start }, columns: { air_temperature_max: "Tmax (°F)", air_temperature_min: "Tmin (°F)", rain: "P (in)" }""",
                "Date,Tmax (°F),Tmin (°F),P (in)\n" + Daily(d => $"{d.Date:yyyy-MM-dd},{(d.MaxC * 1.8) + 32:0.0},{(d.MinC * 1.8) + 32:0.0},{d.RainMm / 25.4:0.000}"), 0.03, 0.02, double.NaN),
            new("ghcn", "format: ghcn-daily", string.Concat(
                new[] { "TMAX", "TMIN", "PRCP" }.Select(e => Daily(d => $"USC00999999,{d.Date:yyyyMMdd},{e},{Math.Round((e is "TMAX" ? d.MaxC : e is "TMIN" ? d.MinC : d.RainMm) * 10):0},,,7,2400"))), 0.051, 0.051, double.NaN),
            new("uscrn", "format: uscrn-daily", Daily(d =>
                $"03047 {d.Date:yyyyMMdd}  2.622  -98.32   44.21 {d.MaxC,7:0.0} {d.MinC,7:0.0} -9999.0 -9999.0 {d.RainMm,7:0.0} -9999.00 C    45.1    12.0    26.0 -9999.0 -9999.0 -9999.0 -99.000 -99.000 -99.000 -99.000 -99.000 -9999.0 -9999.0 -9999.0 -9999.0 -9999.0"), 0.051, 0.051, double.NaN),
            new("gsod", "format: gsod", "\"STATION\",\"DATE\",\"TEMP\",\"TEMP_ATTRIBUTES\",\"DEWP\",\"DEWP_ATTRIBUTES\",\"WDSP\",\"WDSP_ATTRIBUTES\",\"MAX\",\"MAX_ATTRIBUTES\",\"MIN\",\"MIN_ATTRIBUTES\",\"PRCP\",\"PRCP_ATTRIBUTES\"\n" + Daily(d =>
                $"\"72530099999\",\"{d.Date:yyyy-MM-dd}\",\"9999.9\",\" 0\",\"9999.9\",\" 0\",\"999.9\",\" 0\",\"{(d.MaxC * 1.8) + 32:0.0}\",\" \",\"{(d.MinC * 1.8) + 32:0.0}\",\" \",\"{d.RainMm / 25.4:0.00}\",\"G\""), 0.03, 0.13, double.NaN),
        ];
        Assert.Equal(8, ways.Length);
        foreach (var way in ways)
        {
            var site = _home.EmptySite(way.Name);
            File.WriteAllText(site.SiteFile, SiteYaml(way.Source));
            File.Copy(Path.Combine(ExampleSite.Folder, "site", "stations.csv"), site.StationsFile);
            var file = Path.Combine(_home.Path, "yard-" + way.Name + ".txt");
            File.WriteAllText(file, way.Text);
            var result = Run("ingest", file, "--site", way.Name);
            Assert.True(result.ExitCode == 0, result.ToString());
            Assert.Contains(" 0 set aside, 0 refused", result.Output, StringComparison.Ordinal);
        }

        var plain = Days(ways[0].Name);
        Assert.Equal(31, plain.Rows.Count);
        foreach (var way in ways.Skip(1))
        {
            var days = Days(way.Name);
            foreach (var (good, day) in plain.Rows.Zip(days.Rows))
            {
                var date = plain.Text(good, "date");
                Assert.Equal(date, days.Text(day, "date"));
                Held("tmax_c", way.TemperatureC);
                Held("tmin_c", way.TemperatureC);
                Held("rain_mm", way.RainMm);
                if (double.IsNaN(way.EtoMm))
                {
                    // Of extremes alone another equation makes it.
                    Assert.InRange(days.Number(day, "eto_mm") ?? -1, 0.1, 12);
                }
                else
                {
                    Assert.Equal("hourly", days.Text(day, "eto_basis"));
                    Held("eto_mm", way.EtoMm);
                }

                void Held(string column, double tolerance)
                {
                    var (expected, found) = (plain.Number(good, column), days.Number(day, column));
                    Assert.True(Math.Abs(expected!.Value - (found ?? double.NaN)) <= tolerance, $"{way.Name}, {date}, {column}: {found} instead of {expected}");
                }
            }
        }
    }

    private CsvRows Days(string site)
    {
        var result = Run("weather", "--site", site, "--from", "2026-03-01", "--to", "2026-03-31", "--format", "csv");
        Assert.True(result.ExitCode == 0, result.ToString());
        return CsvRows.Of(result.Output);
    }

    private static string SiteYaml(string source)
    {
        var text = File.ReadAllText(Path.Combine(ExampleSite.Folder, "site", "site.yaml")).ReplaceLineEndings("\n");
        var (from, to) = (text.IndexOf("  stations:\n", StringComparison.Ordinal), text.IndexOf("  gauges:\n", StringComparison.Ordinal));

        // What the program itself would doubt in an invented month is not what is looked at.
        var station = $"  stations:\n    - {{ id: yard, files: \"yard-*.txt\", wind_height: 2 m, accept: [stuck, clear_sky, dawn_humidity], {source} }}\n";
        return string.Concat(text.AsSpan(0, from), station, text.AsSpan(to)).Replace("start: 2026-06-01", "start: 2026-03-01", StringComparison.Ordinal);
    }

    private static Way Csv(
        string name, string header, string pattern, string clock, string stamp, int minutes, string more, double temperatureC, double rainMm, double etoMm, Func<Hour, double, FormattableString> row)
    {
        var delimiter = header.Contains(';', StringComparison.Ordinal) ? ';' : ',';
        var names = header.Split('\n')[0].Split(delimiter);
        string[] keys = ["air_temperature", "relative_humidity", "wind_speed", "solar_radiation", "rain"];
        var isCounter = name is "counter";
        var columns = keys.Select((key, i) => isCounter && key is "rain" ? $"rain: {{ column: \"{names[i + 1]}\", counter: true }}" : $"{key}: \"{names[i + 1]}\"");
        var text = new StringBuilder(header).Append('\n');
        var total = 240.0;
        foreach (var part in Truth.SelectMany(h => Enumerable.Range(0, 60 / minutes).Select(i => h with { Begin = h.Begin.AddMinutes(i * minutes), Minutes = minutes, RainMm = h.RainMm * minutes / 60 })))
        {
            total += part.RainMm;
            text.Append(FormattableString.Invariant(row(part, total))).Append('\n');
        }

        return new(
            name,
            $"format: csv, interval: {minutes} min, time: {{ column: {names[0]}, pattern: \"{pattern}\", clock: {clock}, stamp: {stamp} }}, {(more.Length > 0 ? more + ", " : "")}columns: {{ {string.Join(", ", columns)} }}",
            text.ToString(),
            temperatureC,
            rainMm,
            etoMm);
    }

    private static string Daily(Func<Day, FormattableString> row) => string.Concat(Truth
        .GroupBy(h => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(h.Begin, Chicago).DateTime))
        .Where(g => g.Key >= First && g.Key <= Last)
        .Select(g => FormattableString.Invariant(row(new(g.Key, g.Max(h => h.TemperatureC), g.Min(h => h.TemperatureC), g.Sum(h => h.RainMm)))) + "\n"));

    /// <summary>From a day before the month (a running total needs what was before) to a day after it.</summary>
    private static IEnumerable<Hour> Hours()
    {
        var begin = new DateTimeOffset(First.AddDays(-1).ToDateTime(default), Standard);
        for (var i = 0; i < 33 * 24; i++)
        {
            var at = begin.AddHours(i);
            var local = TimeZoneInfo.ConvertTime(at, Chicago);
            var (day, hour) = (local.DayOfYear, local.Hour);
            var warm = hour is >= 6 and <= 15 ? -Math.Cos((hour - 6) * Math.PI / 9) : Math.Cos((hour + 24 - 15) % 24 * Math.PI / 15);
            yield return new(
                at,
                60,
                Math.Round(9 + (day * 7 % 5 * 0.3) + (6 * warm), 1),
                Math.Round(65 - (25 * warm)),
                Math.Round(2.5 + Math.Sin(i * 0.37), 2),
                Math.Round(Math.Max(0, 640 * Math.Sin((hour - 6.5) * Math.PI / 12)), 1),
                day % 4 == 1 && hour is >= 12 and < 16 ? 0.6 + (day % 10 * 0.12) : 0);
        }
    }

    private static string Comma(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture).Replace('.', ',');

    private ProgramResult Run(params string[] arguments) => RunningProgram.Run([.. arguments, "--home", _home.Path]);

    private sealed record Hour(DateTimeOffset Begin, int Minutes, double TemperatureC, double HumidityPercent, double WindMPerS, double SunWPerM2, double RainMm)
    {
        public DateTimeOffset End => Begin.AddMinutes(Minutes);
    }

    private sealed record Day(DateOnly Date, double MaxC, double MinC, double RainMm);

    /// <summary>How one format is read, its text, and half of its last digits in metric; ETo NaN where it has not what the hourly equation needs.</summary>
    private sealed record Way(string Name, string Source, string Text, double TemperatureC, double RainMm, double EtoMm);
}
