using System.Globalization;
using System.Text;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Files.Readings;

/// <summary>One invented month, the one in which the clock goes back, written in several units, clocks and delimiters.</summary>
public sealed class SameMonthTests
{
    private static readonly List<Reading> Month = MakeMonth();

    private static readonly UTF8Encoding Bom = new(encoderShouldEmitUTF8Identifier: true);

    public static TheoryData<string> Variants() => new(Written.Keys);

    [Theory]
    [MemberData(nameof(Variants))]
    public void ReadsAsTheSameToTheRoundingOfTheFormat(string variant)
    {
        var (source, bytes, step) = Written[variant];

        var result = StationFile.Read(bytes, source);

        Assert.Empty(result.Report.Problems);
        Assert.Equal((Month.Count, 0, 0), result.Counts);
        Assert.Equal(Month.Select(r => (r.Begin, r.End)), result.Readings.Select(r => (r.Begin, r.End)));
        foreach (var (expected, actual) in Month.Zip(result.Readings))
        {
            Assert.Equal(expected.AirTemperatureC, actual.AirTemperatureC, step.TemperatureC / 2);
            Assert.Equal(expected.RelativeHumidityPercent, actual.RelativeHumidityPercent, 1e-9);
            Assert.Equal(expected.WindSpeedMPerS, actual.WindSpeedMPerS, step.WindMPerS / 2);
            Assert.Equal(expected.SolarRadiationMJPerM2, actual.SolarRadiationMJPerM2, step.RadiationMJ / 2);
            Assert.Equal(expected.RainMm, actual.RainMm, step.RainMm / 2);
        }
    }

    private static readonly Dictionary<string, (WeatherSource Source, byte[] Bytes, Rounding Step)> Written = new(StringComparer.Ordinal)
    {
        ["metric, UTC, start, comma"] = Write(
            new TimeColumn("utc", null, "yyyy-MM-ddTHH:mm:ss'Z'", StampClock.Utc, StampMeaning.Start), ',', "utc,t (°C),rh (%),u (m/s),rs (W/m²),p (mm)", new UTF8Encoding(false), "\n",
            (r, at) => $"{at.UtcDateTime:yyyy-MM-ddTHH:mm:ss}Z,{r.AirTemperatureC:0.0000},{r.RelativeHumidityPercent:0},{r.WindSpeedMPerS:0.0000},{r.SolarRadiationMJPerM2 / 0.0036:0.00},{r.RainMm:0.00}",
            new(1.0001e-4, 1.0001e-4, 3.7e-5, 0.0100001)),
        ["US units, local, end, tab, BOM, CRLF"] = Write(
            new TimeColumn("When", null, "M/d/yyyy h:mm tt", StampClock.Local, StampMeaning.End), '\t', "When\tNote\tOut Temp (deg F)\tOut Hum (%)\tWind Speed (mph)\tSolar (ly)\tRain (in)", Bom, "\r\n",
            (r, at) => $"{StationFile.Chicago.ToLocal(at):M/d/yyyy h:mm tt}\t\"ok\t\"\t{(r.AirTemperatureC * 1.8) + 32:0.0}\t{r.RelativeHumidityPercent:0}\t{r.WindSpeedMPerS / 0.44704:0.0}\t{r.SolarRadiationMJPerM2 / 0.04184:0.00}\t{r.RainMm / 25.4:0.000}",
            new(0.0556, 0.0448, 0.00042, 0.0254001)),
        ["European, local, start, semicolon, two columns, Latin-1"] = Write(
            new TimeColumn("Datum", "Zeit", "dd.MM.yy HH:mm", StampClock.Local, StampMeaning.Start), ';', "Datum;Zeit;\"Temp. (°C)\";Feuchte (%);Wind (km/h);Global (J/cm²);Regen (mm)", Encoding.Latin1, "\r\n",
            (r, at) => $"{StationFile.Chicago.ToLocal(at):dd.MM.yy};{StationFile.Chicago.ToLocal(at):HH:mm};{Comma(r.AirTemperatureC, "0.0")};{r.RelativeHumidityPercent:0};\"{Comma(r.WindSpeedMPerS * 3.6, "0.0")}\";{Comma(r.SolarRadiationMJPerM2 * 100, "0")};{Comma(r.RainMm, "0.00")}",
            new(0.1000001, 0.0278, 0.0100001, 0.0100001)),
        ["standard clock, end, pipe, knots and kelvin, CR, UTF-16"] = Write(
            new TimeColumn("stamp", null, "yyyyMMddHHmm", StampClock.Standard, StampMeaning.End), '|', "no|stamp|air (K)|hum (%)|wind (kn)|sun (kJ/m2)|precip (cm)", Encoding.Unicode, "\r",
            (r, at) => $"7|{at.UtcDateTime.AddHours(-6):yyyyMMddHHmm}|{r.AirTemperatureC + 273.15:0.00}|{r.RelativeHumidityPercent:0}|{r.WindSpeedMPerS * 3600 / 1852:0.00}|{r.SolarRadiationMJPerM2 * 1000:0}|{r.RainMm / 10:0.000}",
            new(0.0100001, 0.0052, 0.0010001, 0.0100001)),
        ["offsets in the text, start, comma, newest first"] = Write(
            new TimeColumn("time", null, "yyyy-MM-dd HH:mmzzz", StampClock.Local, StampMeaning.Start), ',', "time,temp (C),RH (%),wind (ft/s),solar (kW/m2),rain (inches)", new UTF8Encoding(false), "\n",
            (r, at) => $"{StationFile.Chicago.ToLocal(at):yyyy-MM-dd HH:mmzzz},{r.AirTemperatureC:0.00},{r.RelativeHumidityPercent:0},{r.WindSpeedMPerS / 0.3048:0.00},{r.SolarRadiationMJPerM2 / 3.6:0.0000},{r.RainMm / 25.4:0.00}",
            new(0.0100001, 0.00306, 0.00037, 0.254001), newestFirst: true),
    };

    private static string Comma(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture).Replace('.', ',');

    private static (WeatherSource Source, byte[] Bytes, Rounding Step) Write(
        TimeColumn time, char delimiter, string header, Encoding encoding, string newLine,
        Func<Reading, DateTimeOffset, FormattableString> row, Rounding step, bool newestFirst = false)
    {
        var cells = header.Split(delimiter).Select(cell => cell.Trim('"')).ToList();
        var first = cells.Count - 5;
        var source = StationFile.Plain with
        {
            Time = time,
            DecimalComma = delimiter == ';',
            Columns = new[]
            {
                WeatherQuantity.AirTemperature, WeatherQuantity.RelativeHumidity, WeatherQuantity.WindSpeed, WeatherQuantity.SolarRadiation, WeatherQuantity.Rain,
            }.Select((quantity, i) => (quantity, column: new MappedColumn(cells[first + i], null))).ToDictionary(c => c.quantity, c => c.column),
        };
        var rows = Month.Select(r => row(r, time.Stamp == StampMeaning.Start ? r.Begin : r.End).ToString(CultureInfo.InvariantCulture));
        var text = string.Concat((newestFirst ? rows.Reverse() : rows).Prepend(header).Select(line => line + newLine));
        return (source, [.. encoding.GetPreamble(), .. encoding.GetBytes(text)], step);
    }

    /// <summary>November 2026 in Chicago: 721 hours. Whole percents of humidity; the rest has more digits than any format keeps.</summary>
    private static List<Reading> MakeMonth()
    {
        var begin = StationFile.Chicago.DayStart(new DateOnly(2026, 11, 1));
        return
        [
            .. Enumerable.Range(0, 721).Select(hour => new Reading
            {
                Begin = begin.AddHours(hour),
                End = begin.AddHours(hour + 1),
                AirTemperatureC = 6 + (7 * Math.Sin(hour * Math.PI / 12)) - (hour / 90.0),
                RelativeHumidityPercent = Math.Round(70 - (25 * Math.Sin(hour * Math.PI / 12))),
                WindSpeedMPerS = 2.5 + Math.Sin(hour * 0.37),
                SolarRadiationMJPerM2 = Math.Max(0, 1.9 * Math.Sin((hour - 7) * Math.PI / 12)),
                RainMm = hour % 53 == 0 ? 0.25 * (hour % 17) : 0,
            }),
        ];
    }

    /// <summary>The smallest step of each quantity in a file, in the reading's unit.</summary>
    private sealed record Rounding(double TemperatureC, double WindMPerS, double RadiationMJ, double RainMm);
}
