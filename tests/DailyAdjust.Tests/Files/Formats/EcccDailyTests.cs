using Xunit;

namespace DailyAdjust.Tests.Files.Formats;

/// <summary>Environment Canada, daily: flags beside the values, with and without a block above the header.</summary>
public sealed class EcccDailyTests
{
    private const string Format = "eccc-daily";

    private const string Columns = "\"Date/Time\",\"Year\",\"Month\",\"Day\",\"Data Quality\",\"Max Temp (°C)\",\"Max Temp Flag\",\"Min Temp (°C)\",\"Min Temp Flag\",\"Mean Temp (°C)\",\"Mean Temp Flag\",\"Total Precip (mm)\",\"Total Precip Flag\",\"Spd of Max Gust (km/h)\",\"Spd of Max Gust Flag\"\n";

    private const string Older = "\"Station Name\",\"YARD\"\n\"Province\",\"ONTARIO\"\n\"Latitude\",\"43.5\"\n\"Climate Identifier\",\"6150000\"\n\n\"Legend\"\n\"A\",\"Accumulated\"\n\"T\",\"Trace\"\n\n" + Columns;

    private const string Newer = "\"Longitude (x)\",\"Latitude (y)\",\"Station Name\",\"Climate ID\"," + Columns;

    [Fact]
    public void OlderFilesHaveABlockAboveTheHeader()
    {
        var read = FormatFile.Read(Format, Older + Row());

        Assert.Empty(read.Report.Problems);
        Assert.Equal((1, 0, 0), read.Counts);
        var day = read.On("2026-06-01");
        Assert.Equal((28.9, 15.6, 22.3, 2.5), (day.AirTemperatureMaxC, day.AirTemperatureMinC, day.AirTemperatureC, day.RainMm));
        Assert.Empty(day.Marks);
    }

    [Fact]
    public void NewerFilesNameTheStationInEveryRow()
    {
        var text = Newer + Of("6150000") + Row() + Of("615000A") + Row(max: "30.0");

        Assert.True(FormatFile.Read(Format, text).Report.FileRefused);
        var read = FormatFile.Read(Format, text, "615000A");
        Assert.Equal(30, read.On("2026-06-01").AirTemperatureMaxC);
        Assert.Equal((1, 0, 0), read.Counts);
    }

    [Theory]
    [InlineData("0.0", "T", 0.0, "Rain Trace 0.0 T")]
    [InlineData("", "T", 0.0, "Rain Trace T")]
    [InlineData("3.0", "E", 3.0, "Rain EstimatedAtSource 3.0 E")]
    [InlineData("30.0", "A", double.NaN, "Rain SeveralDays 30.0 A")]
    [InlineData("30.0", "F", double.NaN, "Rain SeveralDays 30.0 F")]
    [InlineData("0.0", "C", double.NaN, "Rain IncompleteAtSource 0.0 C")]
    [InlineData("0.0", "L", double.NaN, "Rain IncompleteAtSource 0.0 L")]
    [InlineData("0.0", "^", double.NaN, "Rain IncompleteAtSource 0.0 ^")]
    public void FlagsSayWhatRainIs(string rain, string flag, double expected, string mark)
    {
        var day = FormatFile.Read(Format, Older + Row(rain: rain, rainFlag: flag)).On("2026-06-01");

        Assert.Equal(expected, day.RainMm);
        Assert.Equal([mark], day.Marked());
    }

    [Fact]
    public void EmptyIsMissingAndADayWithoutValuesIsNoReading()
    {
        var read = FormatFile.Read(Format, Older + Row(max: "", maxFlag: "M", rain: "", rainFlag: "M") + "\"2026-06-02\",\"2026\",\"06\",\"02\",\"\",\"\",\"\",\"\",\"\",\"\",\"\",\"\",\"\",\"\",\"\"\n");

        Assert.Equal((2, 0, 0), read.Counts);
        var day = Assert.Single(read.Readings);
        Assert.Equal((double.NaN, 15.6, double.NaN), (day.AirTemperatureMaxC, day.AirTemperatureMinC, day.RainMm));
    }

    [Fact]
    public void AMorningObserversDayIsTheDayBefore()
    {
        var read = FormatFile.Read(Format, Older + Row(), observedAt: "08:00");

        Assert.Equal(2.5, read.On("2026-05-31").RainMm);
        Assert.Contains("Rain OtherWindow 24 h to 08:00 of the next day", read.Readings[0].Marked());
    }

    public static TheoryData<string, int, int, int, string> Defects() => new()
    {
        { Row(max: "2x.9"), 1, 0, 6, "Max Temp (°C): \"2x.9\" is not a number with one decimal" },
        { Row(max: "28,9"), 1, 0, 6, "Max Temp (°C): \"28,9\" is not a number with one decimal" },
        { Row(maxFlag: "T"), 1, 0, 6, "Max Temp (°C): \"28.9 T\" cannot be" },
        { Row(rain: "-2.5"), 1, 0, 12, "Total Precip (mm): \"-2.5\" cannot be" },
        { Row(rainFlag: "Q"), 1, 0, 12, "Total Precip (mm): \"2.5 Q\" cannot be" },
        { Row(day: "02"), 0, 1, 1, "\"2026-06-01\" is not a date as 2026-06-01, or not that of its year, month and day" },
        { Row().TrimEnd()[..^9], 0, 1, 13, "the row has 13 cells and the header has 15" },
        { Row().TrimEnd()[..^2], 0, 1, 15, "the row may be cut: the file ends without ending this line" },
    };

    [Theory]
    [MemberData(nameof(Defects))]
    public void WhatIsNotSureDoesNotCount(string row, int setAside, int refused, int column, string what)
    {
        var read = FormatFile.Read(Format, Columns + Row().Replace("06-01", "06-30", StringComparison.Ordinal).Replace("\"01\"", "\"30\"", StringComparison.Ordinal) + row);

        Assert.Equal((1, setAside, refused), read.Counts);
        Assert.Equal(1 + setAside, read.Readings.Count);
        var told = Assert.Single(read.Told());
        Assert.Equal((3, column), (told.Line, told.Column));
        Assert.StartsWith(what, told.What, StringComparison.Ordinal);
    }

    private static string Of(string station) => $"\"-80.5\",\"43.5\",\"YARD\",\"{station}\",";

    private static string Row(string day = "01", string max = "28.9", string maxFlag = "", string rain = "2.5", string rainFlag = "") =>
        $"\"2026-06-01\",\"2026\",\"06\",\"{day}\",\"\",\"{max}\",\"{maxFlag}\",\"15.6\",\"\",\"22.3\",\"\",\"{rain}\",\"{rainFlag}\",\"<31\",\"\"\n";
}
