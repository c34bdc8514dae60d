using DailyAdjust.Tests.Files.Readings;
using Xunit;

namespace DailyAdjust.Tests.Files.Formats;

/// <summary>Deutscher Wetterdienst KL: padded cells, -999, rain from 06 to 06 h UTC.</summary>
public sealed class DwdDailyTests
{
    private const string Format = "dwd-daily";
    private const string Header = "STATIONS_ID;MESS_DATUM;QN_3;  FX;  FM;QN_4; RSK;RSKF; SDK;SHK_TAG;  NM; VPM;  PM; TMK; UPM; TXK; TNK; TGK;eor\r\n";

    [Fact]
    public void ADayIsReadAndItsRainHasItsWindow()
    {
        var clock = StationFile.Clock("Europe/Berlin");

        var read = FormatFile.Read(Format, Header + Row(), clock: clock);

        Assert.Empty(read.Report.Problems);
        Assert.Equal((1, 0, 0), read.Counts);
        var day = read.On("2026-06-01", clock);
        Assert.Equal((22.3, 28.9, 15.6, 66), (day.AirTemperatureC, day.AirTemperatureMaxC, day.AirTemperatureMinC, day.RelativeHumidityPercent));
        Assert.Equal((3.1, 10.5, 2.5), (day.WindSpeedMPerS, day.SunshineH, day.RainMm));
        Assert.Equal(["Rain OtherWindow 06 h UTC to 06 h UTC of the next day"], day.Marked());
    }

    [Fact]
    public void MinusNineHundredNinetyNineIsMissing()
    {
        var day = FormatFile.Read(Format, Header + Row(sun: "-999", rain: "-999")).On("2026-06-01");

        Assert.Equal((double.NaN, double.NaN, 28.9), (day.SunshineH, day.RainMm, day.AirTemperatureMaxC));
        Assert.Empty(day.Marks);
    }

    public static TheoryData<string, int, int, int, string> Defects() => new()
    {
        { Row(rain: "2,5"), 1, 0, 7, "RSK: \"2,5\" is not a number with a decimal point" },
        { Row(rain: "-2.5"), 1, 0, 7, "RSK: \"-2.5\" is below what it can be" },
        { Row(rain: "2.5e1"), 1, 0, 7, "RSK: \"2.5e1\" is not a number with a decimal point" },
        { Row(rain: ""), 1, 0, 7, "RSK: \"\" is not a number with a decimal point" },
        { Row(date: "20260631"), 0, 1, 2, "\"20260631\" is not a date as 20260601" },
        { Row().Replace("eor", "", StringComparison.Ordinal), 0, 1, 1, "the row does not begin with a station's number and end with eor" },
        { Row().TrimEnd()[..^1], 0, 1, 19, "the row may be cut" },
        { Row().Replace("28.9;", "28.9", StringComparison.Ordinal), 0, 1, 18, "the row has 18 cells and the header has 19" },
    };

    [Theory]
    [MemberData(nameof(Defects))]
    public void WhatIsNotSureDoesNotCount(string row, int setAside, int refused, int column, string what)
    {
        var read = FormatFile.Read(Format, Header + Row(date: "20260531") + row);

        Assert.Equal((1, setAside, refused), read.Counts);
        Assert.Equal(1 + setAside, read.Readings.Count);
        var told = Assert.Single(read.Told());
        Assert.Equal((3, column), (told.Line, told.Column));
        Assert.StartsWith(what, told.What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("44")]
    [InlineData("00044")]
    public void AStationsNumberMayHaveZerosBefore(string code)
    {
        var read = FormatFile.Read(Format, Header + Row() + Row(station: "       3987", rain: "9.9"), code);

        Assert.Equal(2.5, Assert.Single(read.Readings).RainMm);
    }

    private static string Row(string station = "         44", string date = "20260601", string rain = "2.5", string sun = "10.500") =>
        $"{station};{date};  10;  12.1;   3.1;  10;{rain,6};   6;{sun,7};   0;   4.2;  14.2; 1010.05;  22.3;  66.00;  28.9;  15.6;  13.0;eor\r\n";
}
