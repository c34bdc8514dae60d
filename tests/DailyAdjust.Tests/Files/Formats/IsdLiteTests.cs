using Xunit;

namespace DailyAdjust.Tests.Files.Formats;

/// <summary>ISD-Lite: hours of UTC; an observation is of the hour that it ends.</summary>
public sealed class IsdLiteTests
{
    private const string Format = "isd-lite";
    private const string Hour0 = "2026 06 01 00   289   144 10132   180    31     2     5 -9999\n";
    private const string Hour1 = "2026 06 01 01   -12 -9999 -9999 -9999 -9999 -9999    -1 -9999\n";
    private const string Hour6 = "2026 06 01 06   200   100 10132   180     0     2 -9999    12\n";

    [Fact]
    public void AnHourIsTheOneBeforeItsTime()
    {
        var read = FormatFile.Read(Format, Hour0 + Hour1);

        Assert.Empty(read.Report.Problems);
        Assert.Equal((2, 0, 0), read.Counts);
        var (first, second) = (read.Readings[0], read.Readings[1]);
        Assert.Equal((new DateTimeOffset(2026, 5, 31, 23, 0, 0, TimeSpan.Zero), new DateTimeOffset(2026, 6, 1, 0, 0, 0, TimeSpan.Zero)), (first.Begin, first.End));
        Assert.Equal((28.9, 14.4, 3.1, 0.5), (first.AirTemperatureC, first.DewPointC, first.WindSpeedMPerS, first.RainMm));
        Assert.Equal((-1.2, double.NaN, double.NaN, 0), (second.AirTemperatureC, second.DewPointC, second.WindSpeedMPerS, second.RainMm));
        Assert.Equal(["Rain Trace -1"], second.Marked());
    }

    [Fact]
    public void RainOfSixHoursIsNoHoursRain()
    {
        var read = FormatFile.Read(Format, Hour0 + Hour6);

        Assert.Equal([0.5, double.NaN], read.Readings.Select(r => r.RainMm));
        Assert.Equal((2, 0, 0), read.Counts);
        Assert.Equal([(2, 56, "1 rows have rain of six hours and none of their hour; it is not used")], read.Told());
    }

    public static TheoryData<string, int, int, int, string> Defects() => new()
    {
        { Hour0.Replace("   289", "   2x9", StringComparison.Ordinal), 1, 0, 17, "air temperature: \"2x9\" is not a whole number" },
        { Hour0.Replace("   289", "  28.9", StringComparison.Ordinal), 1, 0, 16, "air temperature: \"28.9\" is not a whole number" },
        { Hour0.Replace("    31", "   -31", StringComparison.Ordinal), 1, 0, 41, "wind speed: \"-31\" is below 0" },
        { Hour0.Replace("   289   144", "   289", StringComparison.Ordinal), 0, 1, 56, "the row has 11 numbers and needs 12" },
        { Hour0.Replace("   289", "   2 9", StringComparison.Ordinal), 0, 1, 57, "the row has more than 12 numbers and needs 12" },
        { Hour0.Replace("06 01 00", "06 01 24", StringComparison.Ordinal), 0, 1, 1, "\"2026 06 01 24\" is not a year, month, day and hour" },
        { Hour0.Replace("06 01 00", "02 30 00", StringComparison.Ordinal), 0, 1, 1, "\"2026 02 30 00\" is not a year, month, day and hour" },
        { Hour0[..59], 0, 1, 60, "the file ends in the middle of this line" },
    };

    [Theory]
    [MemberData(nameof(Defects))]
    public void WhatIsNotSureDoesNotCount(string row, int setAside, int refused, int column, string what)
    {
        var read = FormatFile.Read(Format, Hour1 + row);

        Assert.Equal((1, setAside, refused), read.Counts);
        Assert.Equal(1 + setAside, read.Readings.Count);
        Assert.DoesNotContain(read.Readings, r => r.AirTemperatureC > 0 && r.WindSpeedMPerS > 0);
        var told = Assert.Single(read.Told());
        Assert.Equal((2, column), (told.Line, told.Column));
        Assert.StartsWith(what, told.What, StringComparison.Ordinal);
    }
}
