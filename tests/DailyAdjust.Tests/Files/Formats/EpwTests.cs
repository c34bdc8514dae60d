using System.Text;
using DailyAdjust.Files.Formats;
using Xunit;

namespace DailyAdjust.Tests.Files.Formats;

/// <summary>EPW: a typical year for normals, hour 1 is the first of the day.</summary>
public sealed class EpwTests
{
    [Fact]
    public void ThePlaceAndItsHoursAreRead()
    {
        var epw = Read(EpwText.Header + EpwText.Row("1999,6,1,1,60") + EpwText.Row("1987,6,1,14,60") + EpwText.Row("1987,12,31,24,60"));

        Assert.Empty(epw.Report.Problems);
        Assert.Equal(new EpwPlace("Yardville", 41.98, -87.92, -6, 201), epw.Place);
        Assert.Equal([(2001, 6, 1, 6), (2001, 6, 1, 19), (2002, 1, 1, 5)], epw.Readings.Select(r => (r.Begin.Year, r.Begin.Month, r.Begin.Day, r.Begin.Hour)));
        var hour = epw.Readings[1];
        Assert.Equal((25.5, 14.4, 52, 3.1), (hour.AirTemperatureC, hour.DewPointC, hour.RelativeHumidityPercent, hour.WindSpeedMPerS));
        Assert.Equal(850 * 0.0036, hour.SolarRadiationMJPerM2, 1e-12);
        Assert.Equal(0.5, hour.RainMm);
        Assert.Equal(TimeSpan.FromHours(1), hour.End - hour.Begin);
    }

    [Fact]
    public void AtTheMarkOrAboveItIsMissing()
    {
        var hour = Assert.Single(Read(EpwText.Header + EpwText.Row("1987,6,1,14,60", t: "99.9", rh: "999", sun: "9999", wind: "999.0", rain: "999.0")).Readings);

        Assert.All([hour.AirTemperatureC, hour.RelativeHumidityPercent, hour.SolarRadiationMJPerM2, hour.WindSpeedMPerS, hour.RainMm], value => Assert.Equal(double.NaN, value));
        Assert.Equal(14.4, hour.DewPointC);
    }

    [Theory]
    [InlineData("99.0")]
    [InlineData("6.0")]
    [InlineData("0.0")]
    public void RainOfAnUnknownTimeIsNotTheHours(string hours) =>
        Assert.Equal(double.NaN, Assert.Single(Read(EpwText.Header + EpwText.Row("1987,6,1,14,60", rain: "0.0", hours: hours)).Readings).RainMm);

    public static TheoryData<string, int, int, int, string> Defects() => new()
    {
        { EpwText.Row("1987,6,1,25,60"), 0, 1, 1, "\"1987,6,1,25\" is not a year, month, day and hour" },
        { EpwText.Row("1988,2,29,1,60"), 0, 1, 1, "\"1988,2,29,1\" is not a year, month, day and hour" },
        { EpwText.Row("1987,6,1,2,60").Replace(",201.0,", ",", StringComparison.Ordinal)[..60] + "\n", 0, 1, 13, "the row has 13 cells and needs 35" },
        { EpwText.Row("1987,6,1,2,60", t: "2x.5"), 1, 0, 7, "dry bulb: \"2x.5\" is not a number with a decimal point" },
        { EpwText.Row("1987,6,1,2,60", sun: "-850"), 1, 0, 14, "global horizontal radiation: \"-850\" is below what it can be" },
    };

    [Theory]
    [MemberData(nameof(Defects))]
    public void WhatIsNotSureDoesNotCount(string row, int setAside, int refused, int column, string what)
    {
        var epw = Read(EpwText.Header + EpwText.Row("1987,6,1,1,60") + row);

        Assert.Equal((1, setAside, refused), (epw.Report.RowsRead, epw.Report.RowsSetAside, epw.Report.RowsRefused));
        var told = Assert.Single(epw.Report.Problems);
        Assert.Equal((10, column), (told.Line, told.Column));
        Assert.StartsWith(what, told.What, StringComparison.Ordinal);
    }

    /// <summary>Both widths are of the format: one comma less would put every value behind it one cell off.</summary>
    [Fact]
    public void ARowOfAnotherWidthThanTheOthersIsRefused()
    {
        var epw = Read(EpwText.Header + EpwText.Row("1987,6,1,1,60") + EpwText.Row("1987,6,1,2,60").Replace(",1200,1300,", ",12001300,", StringComparison.Ordinal) + EpwText.Row("1987,6,1,3,60"));

        Assert.Equal((2, 0, 1), (epw.Report.RowsRead, epw.Report.RowsSetAside, epw.Report.RowsRefused));
        Assert.All(epw.Readings, hour => Assert.Equal(3.1, hour.WindSpeedMPerS));
    }

    [Theory]
    [InlineData("")]
    [InlineData("Date,Rain\n")]
    [InlineData("LOCATION,Yardville,IL,USA,TMY3,725300,141.98,-87.92,-6.0,201.0\n")]
    [InlineData("LOCATION,Yardville,IL,USA,TMY3,725300,41.98,-87.92,-6.1,201.0\n")]
    public void WithoutAPlaceItIsRefused(string text)
    {
        var epw = Read(text);

        Assert.Null(epw.Place);
        Assert.True(epw.Report.FileRefused);
        Assert.Empty(epw.Readings);
        Assert.Single(epw.Report.Problems);
    }

    public static EpwFile Read(string text)
    {
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(text));
        return EpwReader.Read("typical.epw", stream);
    }
}
