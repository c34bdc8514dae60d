using System.Globalization;
using System.Text;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Files.Readings;
using DailyAdjust.Tests.Weather;
using Xunit;

namespace DailyAdjust.Tests.Files.Formats;

/// <summary>
/// One invented June in Chicago, written in eleven ways, each over its own day. Rain falls from noon to 16:00 and the extremes are at 5 and 15 h, so that the day in standard
/// time (USCRN), in UTC (GSOD, 19 to 19 h) and from 06 h UTC (rain of DWD, 1 to 1 h) have the same of them as the calendar day; their means differ and are not compared.
/// </summary>
public sealed class EightWaysTests
{
    private static readonly DateOnly First = new(2026, 6, 1);
    private static readonly DateOnly Last = new(2026, 6, 30);
    private static readonly List<Reading> Truth = MakeTruth();
    private static readonly TimeSpan Summer = TimeSpan.FromHours(-5);

    /// <summary>Tolerances are half of the last digit written, in metric; ETo NaN where the means of the format's day are not those of the site's, or hours are not known.</summary>
    private static readonly Dictionary<string, Way> Ways = new(StringComparer.Ordinal)
    {
        // 0.1 °F and 0.001 in; ETo: some 0.1 mm per °C and less than 0.1 of a mph, halved.
        ["hourly, local clock, US units"] = Csv("Time,T (°F),RH (%),U (mph),Rs (W/m²),P (in)", "M/d/yyyy h:mm tt", StampClock.Local, StampMeaning.End, 60,
            (r, _) => $"{At(r.End, Summer):M/d/yyyy h:mm tt},{(r.AirTemperatureC * 1.8) + 32:0.0},{r.RelativeHumidityPercent:0},{r.WindSpeedMPerS / 0.44704:0.00},{r.SolarRadiationMJPerM2 / 0.0036:0.0},{r.RainMm / 25.4:0.000}", s => s, 0.028, 0.051, 0.02),

        // 0.1 °C (the truth has no more), 0.01 mm.
        ["hourly, UTC, start, semicolon, decimal comma"] = Csv("Time;T (°C);RH (%);U (km/h);Rs (MJ/m²);P (mm)", "dd.MM.yyyy HH:mm", StampClock.Utc, StampMeaning.Start, 60,
            (r, _) => $"{At(r.Begin, TimeSpan.Zero):dd.MM.yyyy HH:mm};{Comma(r.AirTemperatureC, "0.0")};{r.RelativeHumidityPercent:0};{Comma(r.WindSpeedMPerS * 3.6, "0.00")};{Comma(r.SolarRadiationMJPerM2, "0.0000")};{Comma(r.RainMm, "0.00")}", s => s with { DecimalComma = true }, 0.001, 0.021, 0.01),

        // A running total of 0.01 mm: its differences are off by a whole step at most.
        ["10 minutes, standard clock, running total, units below"] = Csv("Time,T,RH,U,Rs,P\n,°C,%,m/s,W/m²,mm", "yyyy-MM-dd HH:mm", StampClock.Standard, StampMeaning.End, 10,
            (r, total) => $"{At(r.End, TimeSpan.FromHours(-6)):yyyy-MM-dd HH:mm},{r.AirTemperatureC:0.0},{r.RelativeHumidityPercent:0},{r.WindSpeedMPerS:0.00},{r.SolarRadiationMJPerM2 / 0.0006:0.0},{total:0.00}", s => s with { UnitsBelow = true }, 0.001, 0.021, 0.01),

        // As written in metric.
        ["epoch seconds, blanks"] = Csv("Time T RH U Rs P\n- °C % m/s W/m² mm", "epoch", StampClock.Utc, StampMeaning.End, 60,
            (r, _) => $"{r.End.ToUnixTimeSeconds()}  {r.AirTemperatureC:0.0}   {r.RelativeHumidityPercent:0} {r.WindSpeedMPerS:0.00} {r.SolarRadiationMJPerM2 / 0.0036:0.0} {r.RainMm:0.00}", s => s with { UnitsBelow = true, Delimiter = ' ' }, 0.001, 0.021, 0.01),

        // Extremes and rain of a day; the daily equation of ETo is another one than the hourly.
        ["daily csv"] = new(FormatFile.Source("csv") with
        {
            Time = new TimeColumn("Date", null, "yyyy-MM-dd", StampClock.Local, StampMeaning.Start),
            Columns = new Dictionary<WeatherQuantity, MappedColumn> { [WeatherQuantity.AirTemperatureMax] = new("Tmax (°F)", null), [WeatherQuantity.AirTemperatureMin] = new("Tmin (°F)", null), [WeatherQuantity.Rain] = new("P (in)", null) },
        }, "Date,Tmax (°F),Tmin (°F),P (in)\n" + Daily(Summer, d => $"{d.Date:yyyy-MM-dd},{(d.Max * 1.8) + 32:0.0},{(d.Min * 1.8) + 32:0.0},{d.Rain / 25.4:0.000}"), 0.028, 0.013, double.NaN),

        // Tenths of °C and mm.
        ["ghcn .dly"] = new(FormatFile.Source("ghcn-daily"), string.Concat(new[] { "TMAX", "TMIN", "PRCP" }.Select(e => GhcnText.Month(e, "202606", Days(Summer).ToDictionary(d => d.Date.Day, d => $"{Tenths(e, d)}  7")) + "\n")), 0.051, 0.051, double.NaN),
        ["ghcn by year"] = new(FormatFile.Source("ghcn-daily"), string.Concat(new[] { "TMAX", "TMIN", "PRCP" }.Select(e => Daily(Summer, d => $"{GhcnText.Yard},{d.Date:yyyyMMdd},{e},{Tenths(e, d)},,,7,2400"))), 0.051, 0.051, double.NaN),
        ["uscrn"] = new(FormatFile.Source("uscrn-daily"), Daily(TimeSpan.FromHours(-6), d => $"03047 {d.Date:yyyyMMdd}  2.622  -98.32   44.21 {d.Max,7:0.0} {d.Min,7:0.0} -9999.0 -9999.0 {d.Rain,7:0.0} -9999.00 C    45.1    12.0    26.0 -9999.0 -9999.0 -9999.0 -99.000 -99.000 -99.000 -99.000 -99.000 -9999.0 -9999.0 -9999.0 -9999.0 -9999.0"), 0.051, 0.051, double.NaN),

        // 0.1 °F and 0.01 in.
        ["gsod, day in UTC"] = new(FormatFile.Source("gsod"), "\"STATION\",\"DATE\",\"TEMP\",\"TEMP_ATTRIBUTES\",\"DEWP\",\"DEWP_ATTRIBUTES\",\"WDSP\",\"WDSP_ATTRIBUTES\",\"MAX\",\"MAX_ATTRIBUTES\",\"MIN\",\"MIN_ATTRIBUTES\",\"PRCP\",\"PRCP_ATTRIBUTES\"\n"
            + Daily(TimeSpan.Zero, d => $"\"72530099999\",\"{d.Date:yyyy-MM-dd}\",\"9999.9\",\" 0\",\"9999.9\",\" 0\",\"999.9\",\" 0\",\"{(d.Max * 1.8) + 32:0.0}\",\" \",\"{(d.Min * 1.8) + 32:0.0}\",\" \",\"{d.Rain / 25.4:0.00}\",\"G\""), 0.028, 0.13, double.NaN),
        ["eccc"] = new(FormatFile.Source("eccc-daily"), "\"Date/Time\",\"Year\",\"Month\",\"Day\",\"Max Temp (°C)\",\"Max Temp Flag\",\"Min Temp (°C)\",\"Min Temp Flag\",\"Mean Temp (°C)\",\"Mean Temp Flag\",\"Total Precip (mm)\",\"Total Precip Flag\"\n"
            + Daily(Summer, d => $"\"{d.Date:yyyy-MM-dd}\",\"{d.Date:yyyy}\",\"{d.Date:MM}\",\"{d.Date:dd}\",\"{d.Max:0.0}\",\"\",\"{d.Min:0.0}\",\"\",\"\",\"M\",\"{d.Rain:0.0}\",\"\""), 0.051, 0.051, double.NaN),
        ["dwd, rain from 06 h UTC"] = new(FormatFile.Source("dwd-daily"), "STATIONS_ID;MESS_DATUM;  FM; RSK; SDK; TMK; UPM; TXK; TNK;eor\r\n"
            + Daily(TimeSpan.FromHours(-6), d => $"44;{d.Date:yyyyMMdd};-999;{d.Rain:0.0};-999;-999;-999;{d.Max:0.0};{d.Min:0.0};eor"), 0.051, 0.051, double.NaN),
    };

    public static TheoryData<string> Names() => new(Ways.Keys);

    [Theory]
    [MemberData(nameof(Names))]
    public void TheDaysAreTheSameToTheRoundingOfTheFormat(string name)
    {
        var way = Ways[name];
        var read = FormatFile.Read(way.Source, Encoding.UTF8.GetBytes(way.Text));
        Assert.False(read.Report.FileRefused, string.Join("; ", read.Report.Problems.Select(p => p.What)));
        Assert.Equal((0, 0), (read.Report.RowsSetAside, read.Report.RowsRefused));

        var hourly = FormatFile.Source("csv") with { Interval = TimeSpan.FromHours(1) };
        var (expected, days) = (Compute(hourly, Truth), Compute(way.Source, read.Readings));

        Assert.Equal(30, days.Count);
        foreach (var (good, day) in expected.Zip(days))
        {
            Assert.Equal(good.Date, day.Date);
            Assert.Equal(good.AirTemperatureMaxC!.Value, day.AirTemperatureMaxC!.Value, way.TemperatureC);
            Assert.Equal(good.AirTemperatureMinC!.Value, day.AirTemperatureMinC!.Value, way.TemperatureC);
            Assert.Equal(good.RainAt("yard").RainMm!.Value, day.RainAt("yard").RainMm!.Value, way.RainMm);
            Assert.NotNull(day.EtoMm);
            if (!double.IsNaN(way.EtoMm))
            {
                Assert.Equal(EtoBasis.Hourly, day.Basis);
                Assert.Equal(good.EtoMm!.Value, day.EtoMm.Value, way.EtoMm);
            }
        }
    }

    private static IReadOnlyList<WeatherDay> Compute(WeatherSource source, IReadOnlyList<Reading> readings) =>
        new WeatherScene { Stations = [source with { Accept = ["stuck", "clear_sky"] }] }.Days(First, Last, ("yard", readings));

    /// <summary>From 31 May to 1 July: a running total needs what was before.</summary>
    private static List<Reading> MakeTruth()
    {
        var begin = StationFile.Chicago.DayStart(First.AddDays(-1));
        return
        [
            .. Enumerable.Range(0, 32 * 24).Select(i =>
            {
                var (day, hour) = (i / 24, i % 24);
                var warm = hour is >= 5 and <= 15 ? -Math.Cos((hour - 5) * Math.PI / 10) : Math.Cos((((hour + 24 - 15) % 24) * Math.PI) / 14);
                return new Reading
                {
                    Begin = begin.AddHours(i),
                    End = begin.AddHours(i + 1),
                    AirTemperatureC = Math.Round(20 + ((day * 7) % 5 * 0.3) + (7 * warm), 1),
                    RelativeHumidityPercent = Math.Round(65 - (25 * warm)),
                    WindSpeedMPerS = Math.Round(2.5 + Math.Sin(i * 0.37), 2),
                    SolarRadiationMJPerM2 = Math.Round(Math.Max(0, 2.8 * Math.Sin((hour - 5.5) * Math.PI / 15)), 4),
                    RainMm = day % 4 == 1 && hour is >= 12 and < 16 ? 0.6 + (day * 0.12) : 0,
                };
            }),
        ];
    }

    private static Way Csv(string header, string pattern, StampClock clock, StampMeaning stamp, int minutes, Func<Reading, double, FormattableString> row, Func<WeatherSource, WeatherSource> more, double temperatureC, double rainMm, double etoMm)
    {
        var delimiter = header.Contains(';', StringComparison.Ordinal) ? ';' : header.Contains(',', StringComparison.Ordinal) ? ',' : ' ';
        var names = header.Split('\n')[0].Split(delimiter is ' ' ? ' ' : delimiter);
        var parts = 60 / minutes;
        var total = 0.0;
        var text = new StringBuilder(header).Append('\n');
        foreach (var r in Truth)
        {
            for (var i = 0; i < parts; i++)
            {
                total += r.RainMm / parts;
                var part = r with { Begin = r.Begin.AddMinutes(i * minutes), End = r.Begin.AddMinutes((i + 1) * minutes), RainMm = r.RainMm / parts, SolarRadiationMJPerM2 = r.SolarRadiationMJPerM2 / parts };
                text.Append(row(part, total).ToString(CultureInfo.InvariantCulture)).Append('\n');
            }
        }

        var source = StationFile.Plain with
        {
            Time = new TimeColumn("Time", null, pattern, clock, stamp),
            Interval = TimeSpan.FromMinutes(minutes),
            Columns = new[] { WeatherQuantity.AirTemperature, WeatherQuantity.RelativeHumidity, WeatherQuantity.WindSpeed, WeatherQuantity.SolarRadiation, WeatherQuantity.Rain }
                .Select((quantity, i) => (quantity, column: new MappedColumn(names[i + 1], null, Counter: quantity == WeatherQuantity.Rain && parts > 1))).ToDictionary(c => c.quantity, c => c.column),
        };
        return new(more(source), text.ToString(), temperatureC, rainMm, etoMm);
    }

    private static string Daily(TimeSpan offset, Func<OneDay, FormattableString> row) => string.Concat(Days(offset).Select(d => row(d).ToString(CultureInfo.InvariantCulture) + "\n"));

    /// <summary>Days from midnight to midnight of a clock so far from UTC.</summary>
    private static IEnumerable<OneDay> Days(TimeSpan offset) =>
        Truth.GroupBy(r => DateOnly.FromDateTime(r.Begin.ToOffset(offset).Date)).Where(g => g.Key >= First && g.Key <= Last)
            .Select(g => new OneDay(g.Key, g.Max(r => r.AirTemperatureC), g.Min(r => r.AirTemperatureC), g.Sum(r => r.RainMm)));

    private static string Tenths(string element, OneDay day) =>
        Math.Round((element switch { "TMAX" => day.Max, "TMIN" => day.Min, _ => day.Rain }) * 10).ToString(CultureInfo.InvariantCulture);

    private static DateTime At(DateTimeOffset instant, TimeSpan offset) => instant.ToOffset(offset).DateTime;

    private static string Comma(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture).Replace('.', ',');

    private sealed record OneDay(DateOnly Date, double Max, double Min, double Rain);

    private sealed record Way(WeatherSource Source, string Text, double TemperatureC, double RainMm, double EtoMm);
}
