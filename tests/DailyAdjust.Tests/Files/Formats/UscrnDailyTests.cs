using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Files.Formats;

/// <summary>USCRN daily01: the day in standard time, radiation, no flags.</summary>
public sealed class UscrnDailyTests
{
    private const string Format = "uscrn-daily";

    [Fact]
    public void AWinterDayIsTheSitesOwn()
    {
        var read = FormatFile.Read(Format, Row("20260115", "   -1.2", "  -12.0", "    0.0", "   10.25"));

        Assert.Empty(read.Report.Problems);
        var day = read.On("2026-01-15");
        Assert.Equal((-1.2, -12, 0, 10.25), (day.AirTemperatureMaxC, day.AirTemperatureMinC, day.RainMm, day.SolarRadiationMJPerM2));
        Assert.Equal((93.1, 41.5, 66), (day.RelativeHumidityMaxPercent, day.RelativeHumidityMinPercent, day.RelativeHumidityPercent));
        Assert.Equal(21.5, day.AirTemperatureC);
        Assert.Equal(double.NaN, day.WindSpeedMPerS);
        Assert.Empty(day.Marks);
    }

    [Fact]
    public void ASummerDayBeginsAnHourAfterTheSites()
    {
        var day = FormatFile.Read(Format, Row("20260615")).On("2026-06-15");

        Assert.Equal(8, day.Marks.Count);
        Assert.All(day.Marks, mark => Assert.Equal((MarkKind.OtherWindow, "the day in standard time"), (mark.Kind, mark.Raw)));
    }

    [Fact]
    public void NinesAreMissing()
    {
        var day = FormatFile.Read(Format, Row("20260115", "-9999.0", "   15.0", "-9999.0", "-9999.00")).On("2026-01-15");

        Assert.All([day.AirTemperatureMaxC, day.RainMm, day.SolarRadiationMJPerM2], value => Assert.Equal(double.NaN, value));
        Assert.Equal(15, day.AirTemperatureMinC);
        Assert.Empty(FormatFile.Read(Format, Row("20260115", "-9999.0", "-9999.0", "-9999.0", "-9999.00").Replace("21.5", "-9999.0", StringComparison.Ordinal).Replace("93.1    41.5    66.0", "-9999.0 -9999.0 -9999.0", StringComparison.Ordinal)).Readings);
    }

    public static TheoryData<string, int, int, int, string> Defects() => new()
    {
        { Row("20260115", "   2x.0"), 1, 0, 42, "T_DAILY_MAX: \"2x.0\" is not a number with 1 decimals" },
        { Row("20260115", "   28.9", "  15.65"), 1, 0, 49, "T_DAILY_MIN: \"15.65\" is not a number with 1 decimals" },
        { Row("20260115", "   28.9", "   15.6", "   -0.5"), 1, 0, 74, "P_DAILY_CALC: \"-0.5\" is below what it can be" },
        { Row("20260132"), 0, 1, 7, "\"20260132\" is not a date as 20260601" },
        { Row("20260115").Replace("03047", "0304x", StringComparison.Ordinal), 0, 1, 1, "\"0304x\" is not a station's number of five digits" },
        { Row("20260115")[..100], 0, 1, 101, "the row has 13 cells and needs 28" },
        { Row("20260115").Replace("28.9", "2 .9", StringComparison.Ordinal), 0, 1, 210, "the row has more than 28 cells and needs 28" },
    };

    [Theory]
    [MemberData(nameof(Defects))]
    public void WhatIsNotSureDoesNotCount(string row, int setAside, int refused, int column, string what)
    {
        var read = FormatFile.Read(Format, Row("20260114") + row);

        Assert.Equal((1, setAside, refused), read.Counts);
        Assert.Equal(1 + setAside, read.Readings.Count);
        var told = Assert.Single(read.Told());
        Assert.Equal((2, column), (told.Line, told.Column));
        Assert.StartsWith(what, told.What, StringComparison.Ordinal);
    }

    /// <summary>216 characters, from the publisher's columns.</summary>
    private static string Row(string date, string max = "   28.9", string min = "   15.6", string rain = "    2.5", string sun = "   22.40") =>
        $"03047 {date}  2.622 -102.81   31.62 {max} {min}    22.3    21.5 {rain} {sun} C    45.1    12.0    26.0    93.1    41.5    66.0 -99.000 -99.000 -99.000 -99.000 -99.000 -9999.0 -9999.0 -9999.0 -9999.0 -9999.0\n";
}
