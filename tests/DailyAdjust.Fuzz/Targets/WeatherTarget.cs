using System.Text;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Formats;
using DailyAdjust.Files.Readings;
using DailyAdjust.Fuzz.Checks;
using DailyAdjust.Tests.Files.Formats;
using DailyAdjust.Tests.Files.Readings;

namespace DailyAdjust.Fuzz.Targets;

/// <summary>Weather files of one format.</summary>
internal sealed class WeatherTarget(GoodFile file) : Target("weather " + file.Name, 4, [Bytes(string.Join('\n', file.Header.Concat(file.Rows)) + "\n")])
{
    private readonly string _header = string.Concat(file.Header.Select(line => line + "\n"));

    private bool IsStation => string.Equals(file.Source?.Format, "csv", StringComparison.Ordinal);

    public override void Try(byte[] bytes, Random random)
    {
        var clock = WeatherFile.Clock(random);
        var read = WeatherFile.Read(file.Source, bytes, clock);
        Hold.Same(read, WeatherFile.Read(file.Source, bytes, clock));
        WeatherFile.Check(read, WeatherFile.Text(bytes), file.Source is null ? null : clock);
        Rows(read.Report, WeatherFile.Text(bytes));
    }

    private void Rows(ReadingsReport report, string text)
    {
        if (report.FileRefused)
        {
            return;
        }

        var counted = report.RowsRead + report.RowsSetAside + report.RowsRefused + RowCounts.OfOthers(report);
        var lines = RowCounts.Lines(text, IsStation);
        Hold.That(counted <= lines, $"{lines} lines, and {counted} rows were counted");
        var below = text.StartsWith(_header, StringComparison.Ordinal) ? text[_header.Length..] : null;

        // Where the header stands once and at the top, every line below it is a row.
        if (below is not null && (file.Header.Count == 0 || !below.Contains(file.Header[0].Split(',', ';')[0].Trim('"'), StringComparison.OrdinalIgnoreCase)))
        {
            var rows = RowCounts.Lines(below, IsStation);
            Hold.That(rows == counted, $"{rows} rows, and {counted} were counted");
        }
    }
}

/// <summary>Reading a weather file, and what must hold of what came of it.</summary>
internal static class WeatherFile
{
    public const string Name = "w.txt";

    private const int Piece = 64 * 1024;

    private static readonly SiteClock[] Clocks =
        [.. new[] { "America/Chicago", "America/Chicago", "Europe/Berlin", "Australia/Lord_Howe", "America/Santiago", "Asia/Kathmandu", "UTC" }.Select(StationFile.Clock)];

    public static SiteClock Clock(Random random) => Clocks[random.Next(Clocks.Length)];

    /// <param name="source">Null = a typical year.</param>
    public static Result Read(WeatherSource? source, byte[] bytes, SiteClock clock)
    {
        if (source is not null)
        {
            return FormatFile.Read(source, bytes, clock);
        }

        using var stream = new MemoryStream(bytes);
        var epw = EpwReader.Read(Name, stream);
        return new Result(epw.Readings, [], epw.Report);
    }

    /// <param name="text">Of the file, or of what was packed in it.</param>
    /// <param name="clock">By which its days are divided; null = by none.</param>
    public static void Check(Result read, string? text, SiteClock? clock, bool isJson = false)
    {
        if (text is not null)
        {
            Places.Check(read.Report.Problems, Name, text, isJson: isJson);
        }

        Hold.That(!read.Report.FileRefused || read.Report.Problems.Count > 0, "refused without a reason");
        Hold.That(read.Report is { RowsRead: >= 0, RowsSetAside: >= 0, RowsRefused: >= 0, ValuesSetAside: >= 0 }, "less than no rows");
        foreach (var day in clock is null || read.Report.FileRefused ? [] : read.Days)
        {
            Hold.That(day.Readings.All(r => clock!.DateOf(r.Begin) == day.Date), $"a reading of another day than {day.Date:yyyy-MM-dd}");
            Hold.Same(day.Readings, Core.Weather.ReadingBlock.Read(Core.Weather.ReadingBlock.Write(day.Readings)));
        }

        foreach (var reading in read.Report.FileRefused ? [] : read.Readings)
        {
            Hold.That(reading.Begin < reading.End && reading.End - reading.Begin <= TimeSpan.FromHours(25), $"from {reading.Begin:u} to {reading.End:u}");
            Hold.Within(reading.Begin.Year, 1749, 2251, "year of a reading");
            ReadingRanges.Check(reading);
        }
    }

    /// <summary>The bytes as text, by the rules of docs/weather-files.md: a byte order mark, or UTF-8, or else Latin-1.</summary>
    public static string Text(byte[] bytes) => bytes switch
    {
        [0xEF, 0xBB, 0xBF, ..] => Encoding.UTF8.GetString(bytes[3..]),
        [0xFF, 0xFE, ..] => Encoding.Unicode.GetString(bytes[2..]),
        [0xFE, 0xFF, ..] => Encoding.BigEndianUnicode.GetString(bytes[2..]),
        _ => (Enumerable.Range(0, bytes.Length > Piece ? 4 : 1).Any(left => System.Text.Unicode.Utf8.IsValid(bytes.AsSpan(0, Math.Min(Piece, bytes.Length) - left))) ? Encoding.UTF8 : Encoding.Latin1).GetString(bytes),
    };
}
