using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Files.Readings;
using Xunit;

namespace DailyAdjust.Tests.Files.Formats;

/// <summary>GHCN-Daily as .dly.</summary>
public sealed class GhcnMonthLinesTests
{
    private const string Format = "ghcn-daily";

    [Fact]
    public void AMonthOfElementsBecomesTheDaysThatHaveValues()
    {
        var read = Read(
            GhcnText.Month("TMAX", "202606", new() { [1] = "289  7", [2] = "-12  7" }),
            GhcnText.Month("TMIN", "202606", new() { [1] = "156  7" }),
            GhcnText.Month("PRCP", "202606", new() { [1] = "0  7", [30] = "254  7" }),
            GhcnText.Month("AWND", "202606", new() { [1] = "31  W" }),
            GhcnText.Month("TSUN", "202606", new() { [1] = "630  W" }),
            GhcnText.Month("RHMX", "202606", new() { [1] = "93  W" }),
            GhcnText.Month("RHMN", "202606", new() { [1] = "41  W" }),
            GhcnText.Month("RHAV", "202606", new() { [1] = "66  W" }),
            GhcnText.Month("ADPT", "202606", new() { [1] = "144  W" }),
            GhcnText.Month("SNWD", "202606", new() { [3] = "0  7" }));

        Assert.Empty(read.Report.Problems);
        Assert.Equal((10, 0, 0), read.Counts);
        Assert.Equal(["2026-06-01", "2026-06-02", "2026-06-30"], read.Days.Select(day => day.Date.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)));
        var first = read.On("2026-06-01");
        Assert.Equal((28.9, 15.6, 0), (first.AirTemperatureMaxC, first.AirTemperatureMinC, first.RainMm));
        Assert.Equal((3.1, 10.5, 14.4), (first.WindSpeedMPerS, first.SunshineH, first.DewPointC));
        Assert.Equal((93, 41, 66), (first.RelativeHumidityMaxPercent, first.RelativeHumidityMinPercent, first.RelativeHumidityPercent));
        Assert.Equal(-1.2, read.On("2026-06-02").AirTemperatureMaxC);
        Assert.Equal(double.NaN, read.On("2026-06-02").RainMm);
        Assert.Equal(25.4, read.On("2026-06-30").RainMm);
    }

    [Fact]
    public void TraceIsZeroWithAMark()
    {
        var day = Read(GhcnText.Month("PRCP", "202606", new() { [4] = "0T 7" })).On("2026-06-04");

        Assert.Equal(0, day.RainMm);
        Assert.Equal(["Rain Trace 0 T 7"], day.Marked());
    }

    [Theory]
    [InlineData("PRCP", "25 I7", "Rain FailedAtSource 25  I7")]
    [InlineData("PRCP", "0P 7", "Rain IncompleteAtSource 0 P 7")]
    [InlineData("TMAX", "289 SW", "AirTemperatureMax FailedAtSource 289  SW")]
    [InlineData("MDPR", "304  7", "Rain SeveralDays MDPR 304   7")]
    public void WhatThePublisherDoubtsIsMissingNotZero(string element, string value, string mark)
    {
        var day = Read(GhcnText.Month(element, "202606", new() { [9] = value })).On("2026-06-09");

        Assert.Equal((double.NaN, double.NaN), (day.RainMm, day.AirTemperatureMaxC));
        Assert.Equal([mark], day.Marked());
    }

    [Theory]
    [InlineData("TMAX", "289H 7", 28.9, "AirTemperatureMax EstimatedAtSource 289 H 7")]
    [InlineData("PRCP", "25  S", 2.5, "Rain EstimatedAtSource 25   S")]
    [InlineData("TAVG", "200H S", 20.0, "AirTemperature OtherWindow 00 to 24 h UTC")]
    public void WhatThePublisherEstimatedOrTookFromAnotherDayCountsWithAMark(string element, string value, double expected, string mark)
    {
        var day = Read(GhcnText.Month(element, "202606", new() { [9] = value })).On("2026-06-09");

        Assert.Contains(expected, new[] { day.RainMm, day.AirTemperatureMaxC, day.AirTemperatureC });
        Assert.Equal([mark], day.Marked());
    }

    [Fact]
    public void ATotalOfSeveralDaysIsNoDaysRain()
    {
        var read = Read(
            GhcnText.Month("PRCP", "202606", new() { [5] = "0  7", [9] = "0  7" }),
            GhcnText.Month("MDPR", "202606", new() { [8] = "304  7" }),
            GhcnText.Month("DAPR", "202606", new() { [8] = "3  7" }));

        Assert.Equal((3, 0, 0), read.Counts);
        foreach (var date in new[] { "2026-06-06", "2026-06-07", "2026-06-08" })
        {
            Assert.Equal(double.NaN, read.On(date).RainMm);
            Assert.Equal(["Rain SeveralDays in 3 days to 2026-06-08"], read.On(date).Marked());
        }

        Assert.Equal((0, 0), (read.On("2026-06-05").RainMm, read.On("2026-06-09").RainMm));
    }

    [Fact]
    public void AMorningObserversDayIsTheDayBefore()
    {
        var read = FormatFile.Read(Format, GhcnText.Month("PRCP", "202606", new() { [1] = "127  7" }) + "\n", observedAt: "07:00");

        Assert.Equal(12.7, read.On("2026-05-31").RainMm);
        Assert.Equal(["Rain OtherWindow 24 h to 07:00 of the next day"], Assert.Single(read.Readings).Marked());
    }

    [Fact]
    public void AnAfternoonObserversDayIsItsDate()
    {
        var read = FormatFile.Read(Format, GhcnText.Month("PRCP", "202606", new() { [1] = "127  7" }) + "\n", observedAt: "17:00");

        Assert.Equal(["Rain OtherWindow 24 h to 17:00"], read.On("2026-06-01").Marked());
    }

    [Fact]
    public void AFileOfSeveralStationsNeedsACode()
    {
        var text = string.Join('\n', GhcnText.Month("PRCP", "202606", new() { [1] = "1  7" }), GhcnText.Month("PRCP", "202606", new() { [1] = "2  7" }, GhcnText.Other), "");

        var refused = FormatFile.Read(Format, text);
        Assert.True(refused.Report.FileRefused);
        Assert.Equal([(2, 1, $"the file has rows of several stations: {GhcnText.Yard}, {GhcnText.Other}")], refused.Told());

        var read = FormatFile.Read(Format, text, GhcnText.Other);
        Assert.Equal(0.2, Assert.Single(read.Readings).RainMm);
        Assert.Equal((1, 0, 0), read.Counts);
        Assert.Equal([(1, 1, $"1 rows of other stations are passed over: {GhcnText.Yard}")], read.Told());

        var none = FormatFile.Read(Format, text, "USC00333333");
        Assert.Empty(none.Readings);
        Assert.Equal([(1, 1, $"the file has no row of station USC00333333; it has 2 of {GhcnText.Yard}, {GhcnText.Other}")], none.Told());
    }

    public static TheoryData<string, string, int, string> Defects() => new()
    {
        { "a number with a letter", Line.Replace("  289  7", "  2x9  7", StringComparison.Ordinal), 30, "TMAX: \"2x9\" is not a whole number" },
        { "a number not at the right end", Line.Replace("  289  7", " 289   7", StringComparison.Ordinal), 30, "TMAX: \"289 \" is not a whole number" },
        { "a flag that is none", Line.Replace("  289  7", "  289? 7", StringComparison.Ordinal), 30, "TMAX: \"? 7\" are not flags of the format" },
        { "trace that is no trace", GhcnText.Month("PRCP", "202606", new() { [2] = "12T 7" }), 30, "PRCP: \"12 T 7\" cannot be" },
        { "rain below zero", GhcnText.Month("PRCP", "202606", new() { [2] = "-12  7" }), 30, "PRCP: \"-12   7\" cannot be" },
        { "a day that June does not have", GhcnText.Month("TMAX", "202606", new() { [31] = "289  7" }), 262, "TMAX: \"  289\" stands on a day that the month does not have" },
    };

    [Theory]
    [MemberData(nameof(Defects))]
    public void AValueThatIsNotSurelyOneIsSetAside(string defect, string line, int column, string what)
    {
        var read = Read(line);

        Assert.True(read.Counts == (0, 1, 0), defect);
        Assert.DoesNotContain(read.Readings, r => r.Begin == StationFile.Chicago.DayStart(FormatFile.Date("2026-06-02")));
        var told = Assert.Single(read.Told());
        Assert.Equal((1, column), (told.Line, told.Column));
        Assert.StartsWith(what, told.What, StringComparison.Ordinal);
    }

    public static TheoryData<string, string, int, string> Refused() => new()
    {
        { "a character lost", Line.Remove(40, 1), 269, "the line has 268 characters and needs 269" },
        { "a character too many", Line.Insert(40, " "), 270, "the line has 270 characters and needs 269" },
        { "cut", Line[..100], 101, "the line has 100 characters and needs 269" },
        { "no month", Line.Replace("202606", "202613", StringComparison.Ordinal), 12, "\"202613\" is not a year and month" },
        { "no element", Line.Replace("TMAX", "T?AX", StringComparison.Ordinal), 18, "\"T?AX\" is not the name of an element" },
        { "no station", Line.Replace("USC", "U-C", StringComparison.Ordinal), 1, "the line does not begin with a station's code" },
        { "a code that junk has made another's", Line.Insert(10, "NaN"), 270, "the line has 272 characters and needs 269" },
        { "bytes that are no text", Line.Replace("TMAX", "T\0AX", StringComparison.Ordinal), 1, "the line holds bytes that are no text" },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void ALineThatIsNotWholeIsRefusedAndTheOthersCount(string defect, string line, int column, string what)
    {
        var read = Read(GhcnText.Month("TMIN", "202606", new() { [3] = "100  7" }), line);

        Assert.True(read.Counts == (1, 0, 1), defect);
        Assert.Equal(10, Assert.Single(read.Readings).AirTemperatureMinC);
        var told = Assert.Single(read.Told());
        Assert.Equal((2, column), (told.Line, told.Column));
        Assert.StartsWith(what, told.What, StringComparison.Ordinal);
    }

    [Fact]
    public void BlanksThatAreCutOffTheEndChangeNothing()
    {
        Assert.Equal(Read(Line).Readings.Select(Shown), Read(Line.TrimEnd()).Readings.Select(Shown));
        Assert.Equal((1, 0, 0), Read(Line.TrimEnd()).Counts);
    }

    private static readonly string Line = GhcnText.Month("TMAX", "202606", new() { [2] = "289  7", [5] = "301  7" });

    private static string Shown(Reading r) => FormattableString.Invariant($"{r.Begin:O} {r.AirTemperatureMaxC}");

    private static Result Read(params string[] lines) => FormatFile.Read(Format, string.Join("\r\n", lines) + "\r\n");
}
