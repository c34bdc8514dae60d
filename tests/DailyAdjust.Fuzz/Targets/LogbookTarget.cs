using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Files.Rounds;
using DailyAdjust.Fuzz.Checks;
using DailyAdjust.Service.Sites;
using DailyAdjust.Tests.Files;

namespace DailyAdjust.Fuzz.Targets;

/// <summary>The logbook, of the course whose places it names.</summary>
internal sealed class LogbookTarget() : Target("logbook", 14, [.. Samples.Courses.Select(c => c.Logbook).OfType<string>().Select(Samples.Bytes)])
{
    public override void Try(byte[] bytes, Random random)
    {
        var text = DescriptionFiles.Decode(bytes);
        _ = LogbookReader.Recognises(text);
        var site = Samples.CourseOf(course => course.IsLogbookOf(text), random).Site;
        Entries.Check(text, site, () => LogbookReader.Read("logbook.csv", text, site));
    }
}

/// <summary>A round sheet that comes back.</summary>
internal sealed class RoundTarget() : Target("round", 12, [Samples.Bytes(GoodTexts.Round)])
{
    public override void Try(byte[] bytes, Random random)
    {
        var text = DescriptionFiles.Decode(bytes);
        _ = RoundSheetReader.Recognises(text);
        Entries.Check(text, Samples.Site, () => RoundSheetReader.Read("logbook.csv", text, Samples.Site));
    }
}

/// <summary>What must hold of entries that came of a file.</summary>
internal static class Entries
{
    public static void Check(string text, Site site, Func<LogbookReading> read)
    {
        var reading = read();
        Places.Check(reading.Problems, "logbook.csv", text);
        Hold.Same(reading, read());
        Hold.That(reading.RowsRefused == 0 || reading.Problems.Any(p => p.Severity == Files.Severity.Error), "a row was refused without a reason");
        Hold.That(reading.Entries.Select(e => e.Identity).Distinct().Count() == reading.Entries.Count, "two entries are one");
        reading.Entries.ToList().ForEach(entry => Entry(entry, site));

        // A first row that is not read itself leaves it open which row is the header.
        var rows = CsvRowCount.Of(text, DelimiterOf(text));
        var counted = reading.RowsRead + reading.RowsRefused;
        Hold.That(text.Length > 15_000_000 || counted == rows - 1 || (counted == rows && reading.RowsRead == 0), $"{rows} rows with the header, and {reading.RowsRead} read, {reading.RowsRefused} refused");
    }

    private static void Entry(LogEntry entry, Site site)
    {
        Hold.Within(entry.Value, 0, entry.Unit switch
        {
            LogUnit.Percent => Setting.LargestPercent,
            LogUnit.Minutes => 366 * 1440,
            LogUnit.Mm => 2000,
            LogUnit.Litres => 1e12,
            LogUnit.LitresPerMin => 200_000,
            _ => 0,
        }, $"{entry.Kind} in {entry.Unit}");
        Hold.Within(entry.Times, 1, 1000, "times");
        Hold.Within(entry.RodLengthM, double.Epsilon, 2, "rod length");
        Hold.Within(entry.Time.Date.Year, 1900, 2199, "year");
        Hold.Within(entry.Until?.Date.Year, 1900, 2199, "year of the end");
        _ = (entry.CountsFrom(site.Clock), entry.Until?.Instant(site.Clock));
    }

    /// <summary>The sign that the first line has most of.</summary>
    private static char DelimiterOf(string text)
    {
        var first = text.TrimStart('\uFEFF');
        var (counts, quoted) = (new int[4], false);
        foreach (var c in first.TakeWhile(c => c != '\n'))
        {
            if (c == '\r' && !quoted)
            {
                break;
            }

            quoted ^= c == '"';
            var sign = quoted ? -1 : ",;\t|".IndexOf(c, StringComparison.Ordinal);
            _ = sign >= 0 ? counts[sign]++ : 0;
        }

        return ",;\t|"[Array.IndexOf(counts, counts.Max())];
    }
}
