using DailyAdjust.Core.Plan;
using DailyAdjust.Files.Sites;

namespace DailyAdjust.Files.Audits;

/// <summary>The rows of one run, as catch cups. Some of them may be half read; only what they make certain is told.</summary>
/// <param name="rows">In the order of the file, one or more.</param>
/// <param name="isWhole">No row that may belong to it is missing.</param>
/// <param name="columns">The header.</param>
/// <param name="problems">Where it is told.</param>
internal sealed class CupRun(IReadOnlyList<CupReading> rows, bool isWhole, CupColumns columns, ProblemList problems)
{
    /// <summary>The cups, or null when anything in the file is wrong, which is told.</summary>
    public CatchCups? Read()
    {
        CheckNames();
        var minutes = OfAll(CupColumns.RunTime, r => r.RunMinutes);
        var throat = OfAll(columns.Throat, r => r.ThroatM2);
        var wind = OfAll(CupColumns.Wind, r => r.WindMPerS);
        CheckThere(CupColumns.RunTime, r => r.RunMinutes);
        if (columns.Has(CupColumns.Volume))
        {
            CheckThere(columns.Throat, r => r.ThroatM2);
        }

        if (isWhole && rows.Count < CatchAudit.FewestCups)
        {
            problems.Error(rows[0].Line, columns.Place(CupColumns.Where), FormattableString.Invariant($"{rows.Count} cups have no quarter"), FormattableString.Invariant($"at least {CatchAudit.FewestCups}; {StationAudit.UsualCups} and more are common practice"));
        }

        var depths = rows.Select(r => columns.Has(CupColumns.Volume) ? r.Caught / throat : r.Caught).ToList();
        CheckDepths(depths);
        CheckRate(depths, minutes);
        return problems.HasErrors ? null : new CatchCups(rows[0].Stations, minutes!.Value, [.. depths.OfType<double>()], wind);
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

    /// <summary>What is the same for a whole run need stand in one of its rows only; where it stands again, it says the same. Null where it is not known, or two rows disagree.</summary>
    private double? OfAll(string column, Func<CupReading, double?> value)
    {
        var given = rows.Where(r => value(r) is not null).ToList();
        var others = given.Where(r => value(r) != value(given[0])).ToList();
        foreach (var row in others)
        {
            problems.Error(row.Line, columns.Place(column), FormattableString.Invariant($"{column} is another than in line {given[0].Line} of the same run"), "a run has one; a second run of the same station belongs in a file of its own");
        }

        return given.Count > 0 && others.Count == 0 ? value(given[0]) : null;
    }

    /// <summary>Tells what no row says; a row that cannot be read may say it.</summary>
    private void CheckThere(string column, Func<CupReading, double?> value)
    {
        if (isWhole && columns.Has(column) && rows.All(r => value(r) is null && !r.Unread.Contains(column)))
        {
            problems.Error(rows[0].Line, columns.Place(column), $"{column} of this run is not known", "write it in this row; the run's other rows may leave it empty");
        }
    }

    /// <summary>A slip of the unit makes metres or nothing of it.</summary>
    private void CheckDepths(List<double?> depths)
    {
        foreach (var (row, depth) in rows.Zip(depths).Where(c => c.Second is { } mm && !CupRow.DepthMm.Holds(mm)))
        {
            problems.Error(row.Line, columns.Place(columns.Caught), $"volume and throat make a depth of {Wording.Number(depth!.Value)} mm", $"it lies {CupRow.DepthMm.InWords(x => x, "mm")}; look at both and their units");
        }
    }

    /// <summary>Of a run whose every cup is known.</summary>
    private void CheckRate(List<double?> depths, double? minutes)
    {
        if (isWhole && 60 * depths.Average() / minutes is { } rate && depths.TrueForAll(d => d is { } mm && CupRow.DepthMm.Holds(mm)) && !AreaSection.RateMmPerHour.Holds(rate))
        {
            problems.Error(
                rows[0].Line,
                columns.Place(columns.Caught),
                rate == 0 ? "every cup of this run is empty" : $"this run makes a precipitation rate of {Wording.Number(rate)} mm/h",
                rate == 0 ? "take the run out, or write what the cups caught" : $"it lies {AreaSection.RateMmPerHour.InWords(x => x, "mm/h")}; look at {columns.Caught}, run time and their units");
        }
    }
}
