using DailyAdjust.Core.Plan;
using DailyAdjust.Files.Sites;

namespace DailyAdjust.Files.Audits;

/// <summary>The rows of one run, as catch cups.</summary>
internal sealed class CupRun(IReadOnlyList<CupReading> rows, CupColumns columns, ProblemList problems)
{
    private readonly int _before = problems.Count;

    /// <summary>The cups, or null when anything in the run is wrong, which is told.</summary>
    public CatchCups? Read()
    {
        CheckNames();
        var minutes = OfAll(CupColumns.RunTime, r => r.RunMinutes);
        var throat = OfAll(columns.Throat, r => r.ThroatM2);
        var wind = OfAll(CupColumns.Wind, r => r.WindMPerS);
        if (minutes is null)
        {
            Missing(CupColumns.RunTime);
        }

        if (throat is null && columns.Has(CupColumns.Volume))
        {
            Missing(columns.Throat);
        }

        if (rows.Count < CatchAudit.FewestCups)
        {
            problems.Error(rows[0].Line, columns.Place(CupColumns.Where), FormattableString.Invariant($"{rows.Count} cups have no quarter"), FormattableString.Invariant($"at least {CatchAudit.FewestCups}; {StationAudit.UsualCups} and more are common practice"));
        }

        if (problems.Count > _before)
        {
            return null;
        }

        var cups = new CatchCups(rows[0].Stations, minutes!.Value, [.. rows.Select(r => throat is { } m2 ? r.Caught / m2 : r.Caught)], wind);
        CheckDepths(cups);
        return problems.Count > _before ? null : cups;
    }

    /// <summary>A row that was pasted twice would count twice.</summary>
    private void CheckNames()
    {
        var lines = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        foreach (var row in rows.Where(r => r.Cup.Length > 0 && !lines.TryAdd(r.Cup, r.Line)))
        {
            problems.Error(row.Line, columns.Place(CupColumns.Cup), FormattableString.Invariant($"cup {Wording.Quote(row.Cup)} of this run stands in line {lines[row.Cup]} already"), "give each its own name, or take one row out");
        }
    }

    /// <summary>What is the same for a whole run need stand in one of its rows only; where it stands again, it says the same.</summary>
    private double? OfAll(string column, Func<CupReading, double?> value)
    {
        var given = rows.Where(r => value(r) is not null).ToList();
        foreach (var row in given.Where(r => value(r) != value(given[0])))
        {
            problems.Error(row.Line, columns.Place(column), FormattableString.Invariant($"{column} is another than in line {given[0].Line} of the same run"), "a run has one; a second run of the same station belongs in a file of its own");
        }

        return given.Count > 0 ? value(given[0]) : null;
    }

    private void Missing(string column) =>
        problems.Error(rows[0].Line, columns.Place(column), $"{column} of this run is not known", "write it in this row; the run's other rows may leave it empty");

    /// <summary>A slip of the unit makes metres or nothing of it.</summary>
    private void CheckDepths(CatchCups cups)
    {
        foreach (var (row, depth) in rows.Zip(cups.DepthsMm).Where(c => !CupRow.DepthMm.Holds(c.Second)))
        {
            problems.Error(row.Line, columns.Place(columns.Caught), $"volume and throat make a depth of {Wording.Number(depth)} mm", $"it lies {CupRow.DepthMm.InWords(x => x, "mm")}; look at both and their units");
        }

        var rate = 60 * cups.DepthsMm.Average() / cups.Minutes;
        if (!AreaSection.RateMmPerHour.Holds(rate))
        {
            problems.Error(
                rows[0].Line,
                columns.Place(columns.Caught),
                rate == 0 ? "every cup of this run is empty" : $"this run makes a precipitation rate of {Wording.Number(rate)} mm/h",
                rate == 0 ? "take the run out, or write what the cups caught" : $"it lies {AreaSection.RateMmPerHour.InWords(x => x, "mm/h")}; look at {columns.Caught}, run time and their units");
        }
    }
}
