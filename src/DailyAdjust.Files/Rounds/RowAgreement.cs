using DailyAdjust.Core.Contracts;
using DailyAdjust.Files.Csv;

namespace DailyAdjust.Files.Rounds;

/// <summary>Rows that answer one line of one sheet: they count once where they say the same, and not at all where they do not.</summary>
internal static class RowAgreement
{
    /// <returns>The answers without those that contradict each other; each such line of a sheet is a problem.</returns>
    public static IReadOnlyList<RoundAnswer> Of(IReadOnlyList<RoundAnswer> answers, CsvHeader header, ProblemList problems)
    {
        var kept = new List<RoundAnswer>();
        foreach (var same in answers.Where(a => a.Entries.Count > 0).GroupBy(a => (a.Entries[0].Sheet, a.Entries[0].Issue, a.Entries[0].Where)))
        {
            var first = same.First();
            if (same.FirstOrDefault(a => !a.Entries.Select(e => e with { Note = "" }).SequenceEqual(first.Entries.Select(e => e with { Note = "" }))) is { } other)
            {
                problems.Error(
                    other.Line,
                    header.Place(RoundColumns.Program),
                    FormattableString.Invariant($"{same.Key.Where} is answered here and in line {first.Line}, and not the same: none of its rows is used"),
                    "keep the row that is right");
                continue;
            }

            kept.Add(first);
            kept.AddRange(same.Skip(1).Select(a => a with { Entries = [] }));
        }

        return [.. answers.Where(a => a.Entries.Count == 0).Concat(kept).OrderBy(a => a.Line)];
    }
}
