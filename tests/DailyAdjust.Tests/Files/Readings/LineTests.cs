using System.Text;
using CsCheck;
using DailyAdjust.Files.Readings;
using Xunit;

namespace DailyAdjust.Tests.Files.Readings;

/// <summary>Files that are cut, empty, binary, in another encoding, or have lines that are no rows.</summary>
public sealed class LineTests
{
    private const string Row = "2026-06-01 12:00,20,1,0.5";

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void EveryLineEndIsOne(string end)
    {
        var result = StationFile.Read(string.Concat(StationFile.PlainHeader.TrimEnd(), end, Row, end, end, "x", end));

        Assert.Equal((1, 0, 1), result.Counts);
        Assert.Equal(4, Assert.Single(result.Report.Problems).Line);
    }

    [Fact]
    public void TheSameTextIsReadFromEveryEncoding()
    {
        var text = StationFile.PlainHeader + Row + "\n";
        Encoding[] encodings = [new UTF8Encoding(true), new UTF8Encoding(false), Encoding.Unicode, Encoding.BigEndianUnicode, Encoding.Latin1];

        Assert.All(encodings, encoding =>
        {
            var result = StationFile.Read([.. encoding.GetPreamble(), .. encoding.GetBytes(text)]);
            Assert.Empty(result.Report.Problems);
            Assert.Equal(0.5, Assert.Single(result.Readings).RainMm);
        });
    }

    [Theory]
    [InlineData(new byte[0], "empty")]
    [InlineData(new byte[] { 0xEF, 0xBB, 0xBF }, "no text")]
    [InlineData(new byte[] { 10, 10, 32, 10 }, "no text")]
    [InlineData(new byte[] { 0x1F, 0x8B, 8, 0 }, "compressed")]
    [InlineData(new byte[] { 0x50, 0x4B, 3, 4, 20 }, "compressed")]
    [InlineData(new byte[] { 0x89, 0x50, 0x4E, 0x47, 13, 10, 26, 10, 0, 0, 0, 13 }, "not text")]
    public void AFileWithoutRowsToReadIsRefusedWithItsReason(byte[] bytes, string why)
    {
        var result = StationFile.Read(bytes);

        Assert.True(result.Report.FileRefused);
        Assert.Equal((0, 0, 0), result.Counts);
        Assert.Contains(why, Assert.Single(result.Report.Problems).What, StringComparison.Ordinal);
    }

    [Fact]
    public void AHeaderAloneIsNoFault()
    {
        var result = StationFile.Read(StationFile.PlainHeader);

        Assert.False(result.Report.FileRefused);
        Assert.Equal((0, 0, 0), result.Counts);
        Assert.Contains("no rows", Assert.Single(result.Report.Problems).What, StringComparison.Ordinal);
    }

    [Fact]
    public void ALineOfTenMegabytesCostsOneRow()
    {
        var result = StationFile.Read(StationFile.PlainHeader + new string('7', 10_000_000) + "\n" + Row + "\n");

        Assert.Equal((1, 0, 1), result.Counts);
        Assert.Equal(2, Assert.Single(result.Report.Problems).Line);
    }

    [Fact]
    public void ABlockOfNulBytesAtTheEndCostsOneRow()
    {
        var result = StationFile.Read(StationFile.PlainHeader + Row + "\n" + new string('\0', 100_000));

        Assert.Equal((1, 0, 1), result.Counts);
    }

    [Fact]
    public void AnOpenQuoteCostsOneRow()
    {
        var result = StationFile.Read(StationFile.PlainHeader + "2026-06-01 11:00,\"20,1,0\n" + Row + "\n");

        Assert.Equal((1, 0, 1), result.Counts);
        Assert.Equal(0.5, Assert.Single(result.Readings).RainMm);
    }

    /// <summary>A file cut anywhere in its last row: either the row is the whole one, or the doubtful part of it does not count.</summary>
    [Theory]
    [InlineData("0.50")]
    [InlineData("12")]
    [InlineData("12.75")]
    [InlineData("\"3.25\"")]
    public void ACutLastRowNeverGivesAnotherNumber(string lastCell)
    {
        var before = string.Concat(Enumerable.Range(0, 11).Select(hour => $"2026-06-01 {hour:00}:00,20,1,0.00\n"));
        var last = $"2026-06-01 11:00,21.5,1.5,{lastCell}";
        var whole = StationFile.Read(StationFile.PlainHeader + before + last + "\n").Readings[^1];

        for (var length = 1; length <= last.Length; length++)
        {
            var result = StationFile.Read(StationFile.PlainHeader + before + last[..length]);

            Assert.Equal(12, result.Report.RowsRead + result.Report.RowsSetAside + result.Report.RowsRefused);
            if (result.Readings.Count == 12)
            {
                var cut = result.Readings[^1];
                Assert.Equal((whole.AirTemperatureC, whole.WindSpeedMPerS), (cut.AirTemperatureC, cut.WindSpeedMPerS));
                Assert.True(double.IsNaN(cut.RainMm) || cut.RainMm == whole.RainMm);
            }
            else
            {
                Assert.Equal(1, result.Report.RowsRefused);
            }
        }
    }

    [Theory]
    [InlineData("0.50", 0.5)] // as many decimals as ever: whole
    [InlineData("0.5", double.NaN)]
    [InlineData("7", double.NaN)]
    [InlineData("\"7\"", 7)] // the quote is closed: whole
    [InlineData("", double.NaN)]
    public void TheLastNumberOfAnUnendedLineCountsWhereItIsSurelyWhole(string lastCell, double rain)
    {
        var before = string.Concat(Enumerable.Range(0, 11).Select(hour => $"2026-06-01 {hour:00}:00,20,1,0.00\n"));

        var result = StationFile.Read(StationFile.PlainHeader + before + $"2026-06-01 11:00,21.5,1.5,{lastCell}");

        Assert.Equal(rain, result.Readings[^1].RainMm);
        Assert.Equal(21.5, result.Readings[^1].AirTemperatureC);
    }

    [Fact]
    public void ATimeAtTheUnendedEndOfTheFileIsNotTrusted()
    {
        var source = StationFile.Plain with { Time = StationFile.Plain.Time with { Pattern = "yyyy-MM-dd H:m" } };

        var result = StationFile.Read("Temp (°C),Wind (m/s),Rain (mm),Time\n20,1,0,2026-06-01 11:00\n20,1,0,2026-06-01 12:0", source);

        Assert.Equal((1, 0, 1), result.Counts);
    }

    [Fact]
    public void EmptyCellsAtTheEndOfARowAreNoFault()
    {
        var result = StationFile.Read(StationFile.PlainHeader.TrimEnd() + ",\n" + Row + "\n" + Row.Replace("12:00", "13:00", StringComparison.Ordinal) + ",,\n");

        Assert.Equal((2, 0, 0), result.Counts);
    }

    [Fact]
    public void ManyDefectsOfASortAreCountedAndFewAreKept()
    {
        var text = StationFile.PlainHeader + string.Concat(Enumerable.Range(0, 5000).Select(i => i % 2 == 0 ? "bad\n" : Row + "x\n"));

        var result = StationFile.Read(text);

        Assert.Equal((0, 2500, 2500), result.Counts);
        Assert.Equal(42, result.Report.Problems.Count);
        Assert.All(result.Report.Problems.TakeLast(2), p => Assert.StartsWith("2480 more of these", p.What, StringComparison.Ordinal));
    }

    [Fact]
    public void RowsInAnyOrderGiveTheSameReadings()
    {
        var rows = Enumerable.Range(0, 200).Select(i => FormattableString.Invariant($"2026-06-{1 + (i / 24):00} {i % 24:00}:00,{i},1,0\n")).ToArray();
        var inOrder = StationFile.Read(StationFile.PlainHeader + string.Concat(rows)).Readings;

        // At the interval's edge a shuffle must not look like another interval: whole days apart, it does not.
        Gen.Shuffle(rows).Sample(shuffled => Assert.Equal(inOrder, StationFile.Read(StationFile.PlainHeader + string.Concat(shuffled)).Readings), iter: 20);
    }

    [Fact]
    public void DaysAreHandedOutAsRowsComeAndAgainWhereOneComesLate()
    {
        var rows = Enumerable.Range(0, 5_000).Select(i => FormattableString.Invariant($"{new DateTime(2025, 3, 20).AddHours(i):yyyy-MM-dd HH:mm},{i % 40},1,0\n")).ToArray();
        var inOrder = StationFile.Read(StationFile.PlainHeader + string.Concat(rows));
        Assert.Equal(5_000, inOrder.Readings.Count);
        Assert.Distinct(inOrder.Days.Select(day => day.Date));

        // The noon of every day stands at the end.
        var late = StationFile.Read(StationFile.PlainHeader + string.Concat(rows.Where((_, i) => i % 24 != 12)) + string.Concat(rows.Where((_, i) => i % 24 == 12)));
        Assert.Equal(inOrder.Readings, late.Readings);
        Assert.Contains(late.Days, day => day.Readings.Count == 23);
        Assert.Contains(late.Days, day => day.Readings.Count == 1);
    }

    [Fact]
    public void AStreamThatGivesFewBytesAtATimeReadsTheSame()
    {
        var bytes = Encoding.UTF8.GetBytes(StationFile.PlainHeader + Row + "\r\n" + Row.Replace("12:00", "13:00", StringComparison.Ordinal) + "\r\n");
        using var slow = new SlowStream(bytes);
        var days = new List<ReadingDay>();

        StationCsvReader.Read("yard-1.csv", slow, StationFile.Plain, StationFile.Chicago, days.Add);

        Assert.Equal(StationFile.Read(bytes).Readings, Assert.Single(days).Readings);
    }

    private sealed class SlowStream(byte[] bytes) : MemoryStream(bytes)
    {
        public override int Read(Span<byte> buffer) => base.Read(buffer[..Math.Min(buffer.Length, 3)]);

        public override int Read(byte[] buffer, int offset, int count) => base.Read(buffer, offset, Math.Min(count, 3));
    }
}
