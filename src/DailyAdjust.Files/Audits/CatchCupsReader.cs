using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Csv;

namespace DailyAdjust.Files.Audits;

/// <summary>What came of reading a file of catch cups.</summary>
/// <param name="Runs">In the order of the file; empty when there is any error.</param>
/// <param name="Problems">By line and column.</param>
public sealed record CatchCupsReading(IReadOnlyList<CatchCups> Runs, IReadOnlyList<Problem> Problems);

/// <summary>
/// A file of catch cups: one row per cup. Strict: a mean of the cups that happened to be readable is nobody's rate, so that any error refuses the whole file, and
/// all of them are told at once.
/// </summary>
public static class CatchCupsReader
{
    /// <param name="fileName">The name by which problems call the file.</param>
    /// <param name="text">Its text.</param>
    /// <param name="site">Whose stations ran.</param>
    public static CatchCupsReading Read(string fileName, string text, Site site)
    {
        var problems = new ProblemList(fileName);
        var rows = CsvRows.Read(text, problems, out var unreadable);
        var runs = rows.Count > 0 ? Runs(rows, unreadable, CupColumns.Read(rows[0], problems), site, problems) : [];
        return new(problems.HasErrors ? [] : runs, problems.InOrder());
    }

    private static List<CatchCups> Runs(IReadOnlyList<CsvRow> rows, int unreadable, CupColumns columns, Site site, ProblemList problems)
    {
        if (rows.Count == 1 && unreadable == 0)
        {
            problems.Error(rows[0].Line, 1, "there is no cup", "write one row per cup below the header");
        }

        var cups = rows.Skip(1).Select(row => new CupRow(row, columns, site, problems).Read()).ToList();
        var known = cups.Where(c => c.Stations.Count > 0).ToList();

        // A row whose run is not known may be the one that a run seems to lack.
        var isWhole = unreadable == 0 && known.Count == cups.Count;
        var groups = known.GroupBy(c => string.Join(' ', c.Stations.Select(s => s.Key)), StringComparer.Ordinal).Select(g => g.ToList()).ToList();
        CheckOnce(groups, columns, problems);
        return [.. groups.Select(g => new CupRun(g, isWhole, columns, problems).Read()).OfType<CatchCups>()];
    }

    /// <summary>A station has one rate: it cannot stand in two runs.</summary>
    private static void CheckOnce(List<List<CupReading>> groups, CupColumns columns, ProblemList problems)
    {
        var lines = new Dictionary<StationKey, int>();
        foreach (var first in groups.Select(g => g[0]))
        {
            foreach (var key in first.Stations.Select(s => s.Key).Where(key => !lines.TryAdd(key, first.Line)))
            {
                problems.Error(first.Line, columns.Place(CupColumns.Where), FormattableString.Invariant($"{key} stands in another run, from line {lines[key]} on"), "a station has one rate; a second run belongs in a file of its own");
            }
        }
    }
}
