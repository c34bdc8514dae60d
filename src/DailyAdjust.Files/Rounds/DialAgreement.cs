using DailyAdjust.Core.Contracts;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Csv;

namespace DailyAdjust.Files.Rounds;

/// <summary>What one row of a returned round sheet says; no entries where nobody answered.</summary>
internal sealed record RoundAnswer(int Line, IReadOnlyList<LogEntry> Entries)
{
    /// <summary>Nothing was turned: what the sheet took to be on the dial, which nobody read. Null = anything else was said, or it is not to be read.</summary>
    public Setting? Stays { get; init; }

    /// <summary>The number that an entry of it leaves on the dial, percent; null = none, or off.</summary>
    public double? NumberOf(LogEntry entry) => (entry.Value ?? Stays?.Percent) is { } percent and > 0 ? percent : null;
}

/// <summary>Rows for programs on one dial: the dial has one number before the round and one after. Off is no number, since starts can be taken out.</summary>
internal static class DialAgreement
{
    /// <returns>The answers without those of a dial that was given two numbers; each such dial is a problem.</returns>
    public static IReadOnlyList<RoundAnswer> Of(IReadOnlyList<RoundAnswer> answers, Site site, CsvHeader header, ProblemList problems)
    {
        var refused = new HashSet<RoundAnswer>(ReferenceEqualityComparer.Instance);
        foreach (var dial in answers.Where(a => a.Entries.Count > 0).GroupBy(a => (a.Entries[0].Sheet, a.Entries[0].Issue, a.Entries[0].Where.Name)))
        {
            if (OneDial.Of(site, dial.Key.Name).Any() && Against(dial) is (var first, var second, var column))
            {
                refused.UnionWith(dial);
                problems.Error(
                    second.Line,
                    header.Place(column),
                    FormattableString.Invariant($"{Said(second.Entry)} and {Said(first.Entry)} in line {first.Line}, but one dial serves all of {dial.Key.Name}: none of its rows is used"),
                    "write what the dial shows into one of its rows and leave the others empty, or the same into all");
            }
        }

        return [.. answers.Where(a => !refused.Contains(a))];
    }

    /// <summary>The first two numbers of one time that differ; null = none do.</summary>
    private static ((int Line, LogEntry Entry) First, (int Line, LogEntry Entry) Second, string Column)? Against(IEnumerable<RoundAnswer> dial)
    {
        foreach (var time in dial.SelectMany(a => a.Entries.Where(e => a.NumberOf(e) is not null).Select(e => (a.Line, Entry: e, Number: a.NumberOf(e)!.Value))).GroupBy(n => n.Entry.Time).OrderByDescending(t => t.Key))
        {
            var numbers = time.ToList();
            if (numbers.FindIndex(n => n.Number != numbers[0].Number) is >= 0 and var other)
            {
                var isFound = string.Equals(numbers[other].Entry.Text, LogEntry.Found, StringComparison.Ordinal);
                return ((numbers[0].Line, numbers[0].Entry), (numbers[other].Line, numbers[other].Entry), isFound ? RoundColumns.Found : RoundColumns.Done);
            }
        }

        return null;
    }

    private static string Said(LogEntry entry) => entry.Value is { } percent ? $"{entry.Where} has {Wording.Number(percent)} %" : $"{entry.Where} was not turned";
}
