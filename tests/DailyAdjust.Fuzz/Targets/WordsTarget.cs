using System.Globalization;
using System.Text;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Files.Readings;
using DailyAdjust.Fuzz.Checks;
using DailyAdjust.Tests.Files.Readings;

namespace DailyAdjust.Fuzz.Targets;

/// <summary>Dates, times, patterns, numbers, quantities and units, each from a line.</summary>
internal sealed class WordsTarget() : Target("words", 10,
[
    Bytes("2026-06-05\n2026-06-05 10:30\n2026-06-05T10:30:15\n2026-06-05 24:00\n1780000000\n"),
    Bytes("yyyy-MM-dd HH:mm\ndd.MM.yyyy H:mm\nM/d/yyyy hh:mm tt\nyyyy-MM-dd'T'HH:mm:sszzz\nepoch\nyyyyMMdd\nyyyy-MM-dd HH:mm:ss.FFF\n"),
    Bytes("1.5 in\n30 %\n0.25 in/h\n12 mm/h\n1.0 in/ft\n90 s\n2 d\n20 gpm\n3.5 L/min\n68 degF\n20 °C\n850 W/m²\n-1e3 MJ/m2\n"),
    [.. Enum.GetValues<UnitKind>().SelectMany(Units.Spellings).SelectMany(s => Bytes(s + "\n"))],
    Bytes("C1/P2\narea:greens\ngauge:yard\nsetting\nran\nhold\n2026-06-08 done, except C1/P1\nclosed until 2026-06-10\n"),
])
{
    private static readonly UnitKind[] Kinds = Enum.GetValues<UnitKind>();

    public override IReadOnlyList<string> Separators => [" ", "", "-", ":"];

    public override void Try(byte[] bytes, Random random)
    {
        var lines = Encoding.UTF8.GetString(bytes).Split('\n').Take(60).ToList();
        lines.ForEach(Number);
        lines.ForEach(Date);
        lines.ForEach(line => Pattern(line, lines[random.Next(lines.Count)]));
        for (var i = 0; i + 3 < lines.Count && i < 12; i++)
        {
            var line = new LogLine { Time = lines[random.Next(2) * i], Kind = lines[i + 1], Where = lines[i + 2], Value = lines[i + 3], Unit = lines[random.Next(lines.Count)], Until = lines[random.Next(lines.Count)] };
            Hold.Same(LogbookReader.Read(line, Samples.Site), LogbookReader.Read(line, Samples.Site));
        }
    }

    private static void Number(string text)
    {
        if (NumberText.TryParse(text, out var value))
        {
            Hold.That(double.IsFinite(value), $"the number {text} is {value}");
            Hold.That(value.Equals(double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture)), $"the number {text} is read as {value}");
        }

        if (NumberText.TrySplit(text, out var number, out var spelling))
        {
            Hold.That(double.IsFinite(number), $"the quantity {text} is {number}");
            foreach (var unit in Kinds.Select(kind => Units.Find(spelling, kind)).OfType<Unit>())
            {
                var back = unit.FromMetric(unit.ToMetric(number));
                Hold.That(!(Math.Abs(number) is > 1e-100 and < 1e100) || Math.Abs(back - number) <= 1e-9 * Math.Max(Math.Abs(unit.Offset), Math.Abs(number)), $"{number} {unit.Symbol} comes back as {back}");
                Hold.That(Units.Find(unit.Symbol, unit.Kind) == unit, $"{unit.Symbol} is not found by its own name");
            }
        }
    }

    private static void Date(string text)
    {
        if (LogTimeText.TryParse(text, out var time))
        {
            Hold.Within(time.Date.Year, 1900, 2199, "year");
            var written = time.Clock is { } clock ? string.Create(CultureInfo.InvariantCulture, $"{time.Date:yyyy-MM-dd} {clock:HH:mm:ss}") : time.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            Hold.That(LogTimeText.TryParse(written, out var back) && back == time, $"{text} is read as {written}, and that as something else");
        }
    }

    private static void Pattern(string pattern, string stamp)
    {
        foreach (var source in new[] { StationFile.Plain, StationFile.Plain with { Interval = TimeSpan.FromDays(1) } })
        {
            if (StampPattern.Fault(pattern, source.IsDaily) is not null)
            {
                continue;
            }

            var read = new StampPattern(source with { Time = source.Time with { Pattern = pattern } });
            Hold.That(read.TryParse(read.Example, [], out _), $"the pattern {pattern} does not read its own example {read.Example}");
            if (read.TryParse(stamp, [], out var time))
            {
                Hold.Within(time.Year, 1900, 2200, "year of a row");
            }
        }
    }
}
