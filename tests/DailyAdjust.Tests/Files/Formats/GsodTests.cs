using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Files.Readings;
using Xunit;

namespace DailyAdjust.Tests.Files.Formats;

/// <summary>GSOD: °F, knots and inches of a day in UTC.</summary>
public sealed class GsodTests
{
    private const string Format = "gsod";
    private const string Window = "00 to 24 h UTC";
    private const string Header = "\"STATION\",\"DATE\",\"LATITUDE\",\"LONGITUDE\",\"ELEVATION\",\"NAME\",\"TEMP\",\"TEMP_ATTRIBUTES\",\"DEWP\",\"DEWP_ATTRIBUTES\",\"WDSP\",\"WDSP_ATTRIBUTES\",\"MAX\",\"MAX_ATTRIBUTES\",\"MIN\",\"MIN_ATTRIBUTES\",\"PRCP\",\"PRCP_ATTRIBUTES\",\"FRSHTT\"\n";

    [Fact]
    public void ADayIsReadInMetricUnitsWithItsWindow()
    {
        var read = FormatFile.Read(Format, Header + Row());

        Assert.Empty(read.Report.Problems);
        Assert.Equal((1, 0, 0), read.Counts);
        var day = read.On("2026-06-01");
        Assert.Equal((20, 12.5, 25, 15), (Round(day.AirTemperatureC), Round(day.DewPointC), Round(day.AirTemperatureMaxC), Round(day.AirTemperatureMinC)));
        Assert.Equal(10 * 1852 / 3600.0, day.WindSpeedMPerS, 1e-12);
        Assert.Equal(5.08, day.RainMm, 1e-12);
        Assert.Equal(6, day.Marks.Count);
        Assert.All(day.Marks, mark => Assert.Equal((MarkKind.OtherWindow, Window), (mark.Kind, mark.Raw)));
    }

    [Fact]
    public void AtASiteOnUtcTheDayIsTheSitesOwn()
    {
        var clock = StationFile.Clock("Atlantic/Reykjavik");

        Assert.Empty(FormatFile.Read(Format, Header + Row(), clock: clock).On("2026-06-01", clock).Marks);
    }

    [Fact]
    public void NinesAreMissing()
    {
        var day = FormatFile.Read(Format, Header + Row(temp: "9999.9", dewp: "9999.9", wdsp: "999.9", max: "9999.9", prcp: "99.99", prcpFlag: " ")).On("2026-06-01");

        Assert.All([day.AirTemperatureC, day.DewPointC, day.WindSpeedMPerS, day.AirTemperatureMaxC, day.RainMm], value => Assert.Equal(double.NaN, value));
        Assert.Equal(15, Round(day.AirTemperatureMinC));
        Assert.Single(day.Marks);
    }

    [Theory]
    [InlineData("H")]
    [InlineData("I")]
    [InlineData("A")]
    [InlineData("B")]
    [InlineData("C")]
    [InlineData("E")]
    public void RainThatWasNotReportedForTheWholeDayIsUnknown(string flag)
    {
        var day = FormatFile.Read(Format, Header + Row(prcp: "0.00", prcpFlag: flag)).On("2026-06-01");

        Assert.Equal(double.NaN, day.RainMm);
        Assert.Contains(new ValueMark(Core.Sites.WeatherQuantity.Rain, MarkKind.IncompleteAtSource, "0.00 " + flag), day.Marks);
    }

    [Theory]
    [InlineData("D")]
    [InlineData("F")]
    [InlineData("G")]
    public void RainOfTheWholeDayCounts(string flag) =>
        Assert.Equal(0, FormatFile.Read(Format, Header + Row(prcp: "0.00", prcpFlag: flag)).On("2026-06-01").RainMm);

    [Fact]
    public void AnExtremeOfTheHoursIsMarked()
    {
        var day = FormatFile.Read(Format, Header + Row(maxFlag: "*")).On("2026-06-01");

        Assert.Contains(new ValueMark(Core.Sites.WeatherQuantity.AirTemperatureMax, MarkKind.EstimatedAtSource, "77.0*"), day.Marks);
        Assert.Equal(25, Round(day.AirTemperatureMaxC));
    }

    public static TheoryData<string, int, int, int, string> Defects() => new()
    {
        { Row(max: "7x.0"), 1, 0, 13, "MAX: \"7x.0\" is not a number with a decimal point" },
        { Row(max: "770"), 1, 0, 13, "MAX: \"770\" is not a number with a decimal point" },
        { Row(wdsp: "-1.0"), 1, 0, 11, "WDSP: \"-1.0\" is below 0" },
        { Row(prcpFlag: "Z"), 1, 0, 18, "PRCP: \"0.20 Z\" has no letter from A to I" },
        { Row(date: "2026-06-31"), 0, 1, 2, "\"2026-06-31\" is not a date as 2026-06-01" },
        { Row(station: "7253x099999"), 0, 1, 1, "\"7253x099999\" is not a station's code" },
        { Row().Replace("\"  68.0\",", "", StringComparison.Ordinal), 0, 1, 18, "the row has 18 cells and the header has 19" },
        { Row().Replace("YARD, US\"", "YARD, US", StringComparison.Ordinal), 0, 1, 1, "a quote in this line is not closed" },
    };

    [Theory]
    [MemberData(nameof(Defects))]
    public void WhatIsNotSureDoesNotCount(string row, int setAside, int refused, int column, string what)
    {
        var read = FormatFile.Read(Format, Header + Row(date: "2026-05-31") + row);

        Assert.Equal((1, setAside, refused), read.Counts);
        Assert.Equal(1 + setAside, read.Readings.Count);
        var told = Assert.Single(read.Told());
        Assert.Equal((3, column), (told.Line, told.Column));
        Assert.StartsWith(what, told.What, StringComparison.Ordinal);
    }

    [Fact]
    public void TwoStationsNeedACode()
    {
        var text = Header + Row() + Row(station: "72530199999", max: "86.0");

        Assert.True(FormatFile.Read(Format, text).Report.FileRefused);
        Assert.Equal(30, Round(FormatFile.Read(Format, text, "72530199999").On("2026-06-01").AirTemperatureMaxC));
    }

    private static double Round(double value) => Math.Round(value, 9);

    private static string Row(
        string station = "72530099999", string date = "2026-06-01", string temp = "68.0", string dewp = "54.5", string wdsp = "10.0", string max = "77.0", string maxFlag = " ", string prcp = "0.20", string prcpFlag = "G") =>
        $"\"{station}\",\"{date}\",\"41.9\",\"-87.6\",\"180.0\",\"YARD, US\",\"  {temp}\",\"24\",\"  {dewp}\",\"24\",\"  {wdsp}\",\"24\",\"  {max}\",\"{maxFlag}\",\"  59.0\",\" \",\" {prcp}\",\"{prcpFlag}\",\"010000\"\n";
}
