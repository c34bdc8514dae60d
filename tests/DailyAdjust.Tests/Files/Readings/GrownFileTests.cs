using System.Globalization;
using System.Text;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Readings;
using Xunit;

namespace DailyAdjust.Tests.Files.Readings;

/// <summary>A logger's file that grows: what was read before is neither read, counted nor told again, and the new rows read as in the whole file.</summary>
public sealed class GrownFileTests
{
    private static readonly WeatherSource Source = StationFile.Plain with { Interval = TimeSpan.FromMinutes(10), Time = StationFile.Plain.Time with { Clock = StampClock.Standard } };

    public static TheoryData<string> LineEndings() => new("\n", "\r\n", "\r");

    [Theory]
    [MemberData(nameof(LineEndings))]
    public void New_rows_read_as_in_the_whole_file_and_keep_their_line(string end)
    {
        var (text, bytes) = File(end, 20_000);
        var known = Encoding.UTF8.GetByteCount(text[..Nth(text, 19_900, end)]);
        var spoiled = Spoil(bytes, text, 19_950, end);

        var whole = Read(spoiled, 0);
        var tail = Read(spoiled, known);

        Assert.Equal(100, tail.Report.RowsRead + tail.Report.RowsSetAside + tail.Report.RowsRefused);
        var problem = Assert.Single(tail.Report.Problems);
        Assert.Equal(Assert.Single(whole.Report.Problems).ToString(), problem.ToString());
        Assert.InRange(tail.Readings.Count, 100, 4000);
        Assert.Equal(whole.Readings.TakeLast(tail.Readings.Count), tail.Readings);
    }

    [Fact]
    public void A_line_that_was_cut_is_read_again()
    {
        var (text, bytes) = File("\n", 20_000);
        var cut = Nth(text, 19_900, "\n") - 4;
        Assert.Equal(101, Read(bytes, cut).Report.RowsRead);
    }

    [Fact]
    public void A_small_beginning_is_read_again_whole_and_counted()
    {
        var (_, bytes) = File("\n", 300);
        Assert.Equal(300, Read(bytes, bytes.Length - 40).Report.RowsRead);
    }

    [Fact]
    public void Where_another_header_follows_within_the_known_part_everything_is_read()
    {
        var (text, _) = File("\n", 20_000);
        var at = Nth(text, 5_000, "\n");
        var turned = text[..at] + "Time,Wind (m/s),TEMP (°C),Rain (mm)\n" + text[at..];
        var bytes = Encoding.UTF8.GetBytes(turned.Replace("Time,Wind", "TIME,Wind", StringComparison.Ordinal));
        var result = Read(bytes, bytes.Length - 4_000);

        Assert.Equal(20_000, result.Report.RowsRead);
        Assert.Equal(Read(bytes, 0).Readings, result.Readings);
        Assert.Equal(2, result.Readings[^1].AirTemperatureC); // the wind's column, as the second header has it
    }

    private static Result Read(byte[] bytes, long known)
    {
        using var stream = new MemoryStream(bytes);
        var days = new List<ReadingDay>();
        var report = StationCsvReader.Read("yard-1.csv", stream, Source, StationFile.Chicago, days.Add, known);
        return new Result(ReadingMerge.Merge(days.Select(day => day.Readings)), days, report);
    }

    private static (string Text, byte[] Bytes) File(string end, int rows)
    {
        var text = new StringBuilder(StationFile.PlainHeader.Replace("\n", end, StringComparison.Ordinal));
        for (var i = 0; i < rows; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{new DateTime(2026, 1, 1).AddMinutes(10 * (i + 1)):yyyy-MM-dd HH:mm},{10 + (i % 100 / 10.0):0.0},2,0.0{end}");
        }

        return (text.ToString(), Encoding.UTF8.GetBytes(text.ToString()));
    }

    /// <summary>The temperature of one row is no number.</summary>
    private static byte[] Spoil(byte[] bytes, string text, int row, string end)
    {
        var at = text.IndexOf(',', Nth(text, row, end)) + 1;
        var spoiled = (byte[])bytes.Clone();
        spoiled[Encoding.UTF8.GetByteCount(text[..at])] = (byte)'x';
        return spoiled;
    }

    /// <summary>Where the row after so many begins.</summary>
    private static int Nth(string text, int rows, string end)
    {
        var at = 0;
        for (var i = 0; i <= rows; i++)
        {
            at = text.IndexOf(end, at, StringComparison.Ordinal) + end.Length;
        }

        return at;
    }
}
