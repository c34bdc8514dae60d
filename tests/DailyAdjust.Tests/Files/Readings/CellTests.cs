using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;
using Xunit;

namespace DailyAdjust.Tests.Files.Readings;

/// <summary>What is a number, what is a time, and what is neither.</summary>
public sealed class CellTests
{
    [Theory]
    [InlineData("1.25", 1.25)]
    [InlineData(" +1.25 ", 1.25)]
    [InlineData("-0.5", -0.5)]
    [InlineData(".5", 0.5)]
    [InlineData("1.2E-1", 0.12)]
    [InlineData("\"1.25\"", 1.25)]
    public void ANumberIsTaken(string cell, double value) => Assert.Equal(value, Rain(cell, decimalComma: false).Value);

    [Theory]
    [InlineData("1,25", 1.25)]
    [InlineData("12", 12)]
    [InlineData("-0,5", -0.5)]
    public void ANumberWithADecimalCommaIsTakenWhereTheMapSaysSo(string cell, double value) => Assert.Equal(value, Rain(cell, decimalComma: true).Value);

    [Theory]
    [InlineData("1,25", false)]
    [InlineData("1,000", false)]
    [InlineData("1,234.5", false)]
    [InlineData("1 234", false)]
    [InlineData("1'234", false)]
    [InlineData("1.2.3", false)]
    [InlineData("NaN", false)]
    [InlineData("Infinity", false)]
    [InlineData("-∞", false)]
    [InlineData("1e999", false)]
    [InlineData("0x1F", false)]
    [InlineData("5-", false)]
    [InlineData("(5)", false)]
    [InlineData("5 mm", false)]
    [InlineData("$5", false)]
    [InlineData("٣", false)]
    [InlineData("T", false)]
    [InlineData("1.25", true)]
    [InlineData("1.234,5", true)]
    [InlineData("1,2,3", true)]
    public void WhatIsNoNumberIsSetAsideAndTheRowStands(string cell, bool decimalComma)
    {
        var (value, report) = Rain(cell, decimalComma);

        Assert.Equal(double.NaN, value);
        Assert.Equal((0, 1, 0), (report.RowsRead, report.RowsSetAside, report.RowsRefused));
        var problem = Assert.Single(report.Problems);
        Assert.Equal((2, 4), (problem.Line, problem.Column));
        Assert.Contains($"\"{cell}\"", problem.What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("  ")]
    [InlineData("--")]
    [InlineData("nan")]
    [InlineData("-999")]
    [InlineData("-999.00")]
    public void AMissingMarkIsNoNumberAndNoProblem(string cell)
    {
        var (value, report) = Rain(cell, decimalComma: false);

        Assert.Equal(double.NaN, value);
        Assert.Equal((1, 0, 0), (report.RowsRead, report.RowsSetAside, report.RowsRefused));
        Assert.Empty(report.Problems);
    }

    [Theory]
    [InlineData("2026-06-01 12:00:00")]
    [InlineData("2026-6-1 12:00")]
    [InlineData("2026-06-31 12:00")]
    [InlineData("2026-06-01 24:01")]
    [InlineData("2026-06-01 12")]
    [InlineData("0001-01-01 00:00")]
    [InlineData("9999-12-31 24:00")]
    [InlineData("")]
    [InlineData("-999")]
    public void ATimeThatThePatternDoesNotWriteRefusesTheRow(string time)
    {
        var result = StationFile.Read(StationFile.PlainHeader + time + ",20,1,0\n");

        Assert.Equal((0, 0, 1), result.Counts);
        Assert.Empty(result.Readings);
        var problem = Assert.Single(result.Report.Problems);
        Assert.Equal((2, 1), (problem.Line, problem.Column));
        Assert.Contains("2026-06-21 13:45", problem.Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void TwentyFourIsTheEndOfItsDate()
    {
        var result = StationFile.Read(StationFile.PlainHeader + "2026-06-30 24:00,20,1,0\n");

        Assert.Equal(StationFile.Chicago.DayStart(new DateOnly(2026, 7, 1)), Assert.Single(result.Readings).End);
    }

    [Theory]
    [InlineData("2026-06-02 00:00", "yyyy-MM-dd HH:mm", StampMeaning.End, 1)]
    [InlineData("2026-06-01 24:00", "yyyy-MM-dd HH:mm", StampMeaning.End, 1)]
    [InlineData("2026-06-01 23:59", "yyyy-MM-dd HH:mm", StampMeaning.End, 1)]
    [InlineData("2026-06-01 00:00", "yyyy-MM-dd HH:mm", StampMeaning.Start, 1)]
    [InlineData("20260601", "yyyyMMdd", StampMeaning.End, 1)]
    [InlineData("20260601", "yyyyMMdd", StampMeaning.Start, 1)]
    public void ADailyRowIsTheCalendarDayOfItsDate(string stamp, string pattern, StampMeaning meaning, int day)
    {
        var source = StationFile.Plain with { Interval = TimeSpan.FromDays(1), Time = new TimeColumn("Time", null, pattern, StampClock.Utc, meaning) };

        var reading = Assert.Single(StationFile.Read(StationFile.PlainHeader + stamp + ",20,1,0\n", source).Readings);

        Assert.Equal(StationFile.Chicago.DayStart(new DateOnly(2026, 6, day)), reading.Begin);
        Assert.Equal(StationFile.Chicago.DayEnd(new DateOnly(2026, 6, day)), reading.End);
    }

    [Theory]
    [InlineData("MM-dd HH:mm", "must have year")]
    [InlineData("HH:mm", "must have year")]
    [InlineData("d", "must have year")]
    [InlineData("'yMd' HH:mm", "must have year")]
    [InlineData("yyyy-MM-dd", "must have the hour")]
    [InlineData("yyyy-MM-dd hh:mm", "which half of the day")]
    [InlineData("yyyy-MM-dd HH:mm'", "cannot be read")]
    public void APatternThatLeavesTheInstantOpenRefusesTheFile(string pattern, string what)
    {
        var result = StationFile.Read(StationFile.PlainHeader + "2026-06-01 12:00,20,1,0\n", StationFile.Plain with { Time = StationFile.Plain.Time with { Pattern = pattern } });

        Assert.True(result.Report.FileRefused);
        Assert.Contains(what, Assert.Single(result.Report.Problems).What, StringComparison.Ordinal);
    }

    [Fact]
    public void ARowOfMissingValuesIsReadButIsNoReading()
    {
        var result = StationFile.Read(StationFile.PlainHeader + "2026-06-01 12:00,20,1,0\n2026-06-01 13:00,,,\n");

        Assert.Equal((2, 0, 0), result.Counts);
        Assert.Single(result.Readings);
        Assert.Equal(new DateTimeOffset(2026, 6, 1, 17, 0, 0, TimeSpan.Zero), result.Report.End);
    }

    private static (double Value, ReadingsReport Report) Rain(string cell, bool decimalComma)
    {
        var source = StationFile.Plain with { DecimalComma = decimalComma, Missing = ["--", "NAN", "-999"], Delimiter = ';' };
        source = cell is "NaN" ? source with { Missing = [] } : source;
        var result = StationFile.Read(StationFile.PlainHeader.Replace(',', ';') + $"2026-06-01 12:00;20;1;{cell}\n", source);
        return (Assert.Single(result.Readings).RainMm, result.Report);
    }
}
