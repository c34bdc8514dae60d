using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Files.Readings;

/// <summary>Which column is which must be certain, or nothing of the file counts.</summary>
public sealed class ColumnMapTests
{
    [Theory]
    [InlineData("Time,Temp (°C),Wind (m/s),Rain (mm)")]
    [InlineData(" time , TEMP (ºC) ,wind (M/S),rain (mm)")]
    [InlineData("Time;Temp (C);Wind (m/s);Rain (mm)")]
    [InlineData("\"Time\"\t\"Temp (Â°C)\"\t\"Wind (m/s)\"\t\"Rain (mm)\"")]
    [InlineData("Rain (mm)|x|Wind (m/s)|Temp  (˚C)|Time|")]
    public void AHeaderIsKnownInAnySpellingOrderAndDelimiter(string header)
    {
        var delimiter = header.First(c => c is ',' or ';' or '\t' or '|');
        var cells = header.Split(delimiter).Select(c => c.Trim(' ', '"').ToUpperInvariant()).Select(c => c switch
        {
            "TIME" => "2026-06-01 01:00",
            _ when c.StartsWith("TEMP", StringComparison.Ordinal) => "20.5",
            _ when c.StartsWith("WIND", StringComparison.Ordinal) => "2",
            _ when c.StartsWith("RAIN", StringComparison.Ordinal) => "0.4",
            _ => "",
        });

        var result = StationFile.Read("Export of the yard\n\n" + header + "\n" + string.Join(delimiter, cells) + "\n");

        Assert.Empty(result.Report.Problems);
        var reading = Assert.Single(result.Readings);
        Assert.Equal((20.5, 2, 0.4), (reading.AirTemperatureC, reading.WindSpeedMPerS, reading.RainMm));
    }

    [Fact]
    public void SquaredMetresAreKnownWithAndWithoutTheRaisedTwo()
    {
        var source = With(WeatherQuantity.SolarRadiation, "Solar (W/m²)");

        var result = StationFile.Read("Time,Solar (W/m2)\n2026-06-01 12:00,500\n", source);

        Assert.Equal(1.8, Assert.Single(result.Readings).SolarRadiationMJPerM2, 1e-12);
    }

    [Fact]
    public void AColumnSpelledExactlyComesBeforeOneThatOnlyMeansTheSame()
    {
        var result = StationFile.Read("Time,Temp (C),Temp (°C)\n2026-06-01 12:00,1,2\n", With(WeatherQuantity.AirTemperature, "Temp (°C)"));

        Assert.Equal(2, Assert.Single(result.Readings).AirTemperatureC);
    }

    [Theory]
    [InlineData("Time,Temp (°C),Rain (mm)", 2, 1, "no column \"Wind (m/s)\"")]
    [InlineData("Time,Temp (°F),Wind (m/s),Rain (mm)", 2, 1, "no column \"Temp (°C)\"")]
    [InlineData("Time,Temp (°C),Wind (m/s),Rain (mm),temp (°C)", 2, 1, "\"Temp (°C)\" more than once")]
    [InlineData("a,b,c", 1, 1, "no header with \"Time\"")]
    public void AHeaderThatDoesNotFitRefusesTheFileAndSaysWhatItHas(string header, int line, int column, string what)
    {
        var result = StationFile.Read("Export\n" + header + "\n2026-06-01 01:00,20,1,0\n");

        Assert.True(result.Report.FileRefused);
        Assert.Empty(result.Days);
        var problem = Assert.Single(result.Report.Problems);
        Assert.Equal((line, column), (problem.Line, problem.Column));
        Assert.Contains(what, problem.What, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Hint);
    }

    [Fact]
    public void TheHintNamesTheHeadersThatTheFileHas()
    {
        var result = StationFile.Read("Time,Temp (°C),Rain (mm),Wind speed\n");

        Assert.Contains("\"Time\", \"Temp (°C)\", \"Rain (mm)\", \"Wind speed\"", Assert.Single(result.Report.Problems).Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void AHeaderBelowTheTwentiethLineIsNotLookedFor()
    {
        Assert.Empty(StationFile.Read(new string('\n', 19) + StationFile.PlainHeader + "2026-06-01 01:00,20,1,0\n").Report.Problems);
        Assert.True(StationFile.Read(new string('\n', 20) + StationFile.PlainHeader + "2026-06-01 01:00,20,1,0\n").Report.FileRefused);
    }

    [Theory]
    [InlineData("Temp", null, "does not say its unit")]
    [InlineData("Temp (mm)", null, "is not a unit that it can have")]
    [InlineData("Temp (avg)", null, "is not a unit that it can have")]
    [InlineData("Temp", "mph", "\"mph\" is not a unit")]
    [InlineData("Temp (°C)", "°F", "the header says °C")]
    public void AUnitThatIsMissingWrongOrContradictedRefusesTheFile(string header, string? unit, string what)
    {
        var result = StationFile.Read($"Time,{header}\n2026-06-01 01:00,20\n", With(WeatherQuantity.AirTemperature, header, unit));

        Assert.True(result.Report.FileRefused);
        var problem = Assert.Single(result.Report.Problems);
        Assert.Equal((1, 2), (problem.Line, problem.Column));
        Assert.Contains(what, problem.What, StringComparison.Ordinal);
        Assert.Contains("°F", problem.Hint + problem.What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(WeatherQuantity.AirTemperature, "x (avg)", "degF", 68, 20)]
    [InlineData(WeatherQuantity.WindSpeed, "x", "mph", 10, 4.4704)]
    [InlineData(WeatherQuantity.WindSpeed, "x (kn)", null, 36, 18.52)]
    [InlineData(WeatherQuantity.SolarRadiation, "x [W/m2]", null, 1000, 3.6)]
    [InlineData(WeatherQuantity.SolarRadiation, "x", "MJ/m²", 3.6, 3.6)]
    [InlineData(WeatherQuantity.SolarRadiation, "x (langley)", null, 100, 4.184)]
    [InlineData(WeatherQuantity.SolarRadiation, "x (Wh/m²)", null, 1000, 3.6)]
    [InlineData(WeatherQuantity.Sunshine, "x (min)", null, 45, 0.75)]
    [InlineData(WeatherQuantity.Sunshine, "x (h)", null, 0.5, 0.5)]
    [InlineData(WeatherQuantity.Rain, "x (in)", null, 0.5, 12.7)]
    [InlineData(WeatherQuantity.ReferenceEt, "x (in)", null, 0.01, 0.254)]
    [InlineData(WeatherQuantity.RelativeHumidity, "x (%)", null, 55, 55)]
    [InlineData(WeatherQuantity.DewPoint, "x (K)", null, 283.15, 10)]
    public void AValueIsTakenInItsUnit(WeatherQuantity quantity, string header, string? unit, double written, double metric)
    {
        var text = FormattableString.Invariant($"Time,{header}\n2026-06-01 12:00,{written}\n");

        var reading = Assert.Single(StationFile.Read(text, With(quantity, header, unit)).Readings);

        double[] values = [reading.AirTemperatureC, reading.WindSpeedMPerS, reading.SolarRadiationMJPerM2, reading.SunshineH, reading.RainMm, reading.ReferenceEtMm, reading.RelativeHumidityPercent, reading.DewPointC];
        Assert.Equal(metric, Assert.Single(values, v => !double.IsNaN(v)), 1e-9);
    }

    [Fact]
    public void RainPerHourIsNoRainInAnInterval() =>
        Assert.True(StationFile.Read("Time,Rain (mm/h)\n2026-06-01 12:00,3\n", With(WeatherQuantity.Rain, "Rain (mm/h)")).Report.FileRefused);

    [Fact]
    public void AnotherHeaderFurtherDownIsReadAnewOrEndsWhatIsCertain()
    {
        var text = StationFile.PlainHeader + "2026-06-01 01:00,20,1,0\nTime,Rain (mm),Temp (°C),Wind (m/s)\n2026-06-01 02:00,0,21,1\nTime,Rain (mm),Temp (°F),Wind (m/s)\n2026-06-01 03:00,0,70,1\n";

        var result = StationFile.Read(text);

        Assert.Equal((2, 0, 1), result.Counts);
        Assert.Equal([20, 21], result.Readings.Select(r => r.AirTemperatureC));
        Assert.Equal([5, 6], result.Report.Problems.Select(p => p.Line));
    }

    [Fact]
    public void RowsCloserThanTheIntervalRefuseTheFile()
    {
        var text = StationFile.PlainHeader + string.Concat(Enumerable.Range(0, 60).Select(i => $"2026-06-01 {i / 6:00}:{i % 6 * 10:00},20,1,0\n"));

        var result = StationFile.Read(text);

        Assert.True(result.Report.FileRefused);
        Assert.Empty(result.Days);
        Assert.Contains("10 min apart", Assert.Single(result.Report.Problems).What, StringComparison.Ordinal);
    }

    [Fact]
    public void RowsFartherApartThanTheIntervalAreReadWithAWarning()
    {
        var text = StationFile.PlainHeader + string.Concat(Enumerable.Range(0, 24).Select(i => $"2026-06-01 {i:00}:00,20,1,0\n"));

        var result = StationFile.Read(text, StationFile.Plain with { Interval = TimeSpan.FromMinutes(10) });

        Assert.Equal((24, 0, 0), result.Counts);
        Assert.Contains("1 h apart", Assert.Single(result.Report.Problems).What, StringComparison.Ordinal);
    }

    private static WeatherSource With(WeatherQuantity quantity, string header, string? unit = null) =>
        StationFile.Plain with { Columns = new Dictionary<WeatherQuantity, MappedColumn> { [quantity] = new(header, unit) } };
}
