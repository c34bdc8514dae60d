using System.Globalization;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files;
using nietras.SeparatedValues;
using Xunit;

namespace DailyAdjust.Tests.Files.Readings;

/// <summary>Data/readings/station-defects.csv: a station's export with every defect, and what must be said of each.</summary>
public sealed class StationDefectsTests
{
    private static readonly WeatherSource Source = StationFile.Plain with
    {
        Time = new TimeColumn("Datum/Zeit", null, "dd.MM.yyyy HH:mm", StampClock.Local, StampMeaning.End),
        DecimalComma = true,
        Missing = ["---", "-999"],
        Columns = new Dictionary<WeatherQuantity, MappedColumn>
        {
            [WeatherQuantity.AirTemperature] = new("außen (F)", null),
            [WeatherQuantity.RelativeHumidity] = new("Feuchte [%]", null),
            [WeatherQuantity.WindSpeed] = new("Wind (mph)", null),
            [WeatherQuantity.SolarRadiation] = new("Strahlung (ly)", null),
            [WeatherQuantity.Rain] = new("Regen (in)", null),
        },
    };

    private static readonly Result Read = StationFile.Read(File.ReadAllBytes(StationFile.Path("readings/station-defects.csv")), Source);

    [Fact]
    public void EveryDefectIsNamedWithItsPlace()
    {
        var expected = Expected();

        Assert.Equal(expected.Select(e => (e.Line, e.Column, e.Severity)), Read.Report.Problems.Select(p => (p.Line, p.Column, p.Severity)));
        Assert.All(expected.Zip(Read.Report.Problems), pair => Assert.StartsWith(pair.First.What, pair.Second.What, StringComparison.Ordinal));
        Assert.All(Read.Report.Problems, problem => Assert.NotEmpty(problem.Hint));
    }

    [Fact]
    public void EveryRowIsCountedOnce()
    {
        // 26 rows stand below the headers: 29 lines from 5 to 33 less two blank ones and the second header.
        Assert.Equal((14, 5, 7), Read.Counts);
        Assert.Equal(4, Read.Report.ValuesSetAside);
    }

    [Fact]
    public void NoRefusedRowAndNoDoubtfulValueCounts()
    {
        var rainIn = Read.Readings.Select(r => Math.Round(r.RainMm / 25.4, 6));

        Assert.Equal([0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.07, 0.08, 0.09, 0.10, 0.11, 0.12, 0.14, 0.20, 0.21, 0.22, 0.23], rainIn);
    }

    [Fact]
    public void MissingStaysMissingAndTheRestOfTheRowCounts()
    {
        // Ends 09:00 to 15:00 UTC: the rows of 04:00 to 10:00 in daylight time.
        var at = Enumerable.Range(9, 7).Select(hour => Read.Readings.Single(r => r.End == new DateTimeOffset(2026, 3, 8, hour, 0, 0, TimeSpan.Zero))).ToList();

        Assert.Equal([double.NaN, double.NaN, double.NaN, double.NaN, 4, 4, double.NaN], at.Select(r => Math.Round(r.AirTemperatureC, 9)));
        Assert.Equal([84, 85, double.NaN, 86, 86, double.NaN, 85], at.Select(r => r.RelativeHumidityPercent));
        Assert.Equal(double.NaN, at[4].WindSpeedMPerS);
        Assert.Equal(0.5 * 0.04184, at[3].SolarRadiationMJPerM2, 1e-12);
    }

    [Fact]
    public void TheLaterRowOfAnHourCountsValueByValue()
    {
        var corrected = Read.Readings.Single(r => r.End == new DateTimeOffset(2026, 3, 8, 22, 0, 0, TimeSpan.Zero));

        Assert.Equal((51.0 - 32) * 5 / 9, corrected.AirTemperatureC, 1e-12);
        Assert.Equal(60, corrected.RelativeHumidityPercent);
        Assert.Equal(0.14 * 25.4, corrected.RainMm, 1e-12);
    }

    [Fact]
    public void TheRepeatedHourIsReadInFileOrder()
    {
        var night = Read.Readings.Where(r => r.Begin.Month == 11).ToList();

        Assert.Equal([5, 6, 7, 8], night.Select(r => r.End.Hour));
        Assert.Equal([0.20, 0.21, 0.22, 0.23], night.Select(r => Math.Round(r.RainMm / 25.4, 6)));
    }

    [Theory]
    [InlineData("de-DE", ",")]
    [InlineData("tr-TR", ",")]
    [InlineData("en-US", ".")]
    public void NoCultureChangesANumberOrAWord(string culture, string separator)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Assert.Equal(separator, CultureInfo.CurrentCulture.NumberFormat.NumberDecimalSeparator);

            var again = StationFile.Read(File.ReadAllBytes(StationFile.Path("readings/station-defects.csv")), Source);

            Assert.Equal(Read.Readings, again.Readings);
            Assert.Equal(Read.Report.Problems, again.Report.Problems);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static List<(int Line, int Column, Severity Severity, string What)> Expected()
    {
        using var table = Sep.New(',').Reader(o => o with { Unescape = true }).FromFile(StationFile.Path("readings/station-defects-expected.csv"));
        var expected = new List<(int, int, Severity, string)>();
        foreach (var row in table)
        {
            expected.Add((row[0].Parse<int>(), row[1].Parse<int>(), Enum.Parse<Severity>(row[2].ToString()), row[3].ToString()));
        }

        return expected;
    }
}
