using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Files.Csv;

/// <summary>A header with units in brackets: which columns stand where, and the unit of each.</summary>
/// <param name="width">Its cells.</param>
internal abstract class MeasuredHeader(int width)
{
    private readonly Dictionary<string, (int At, Unit? Unit)> _columns = new(StringComparer.Ordinal);

    public int Width => width;

    public bool Has(string column) => _columns.ContainsKey(column);

    /// <summary>The cell of a column; empty where the file does not have it.</summary>
    public string Cell(CsvRow row, string column) => _columns.TryGetValue(column, out var c) && c.At < row.Cells.Count ? row.Cells[c.At] : "";

    /// <summary>From 1.</summary>
    public int Place(string column) => _columns.TryGetValue(column, out var c) ? c.At + 1 : 1;

    /// <summary>The unit of a measured column; null where its header was wrong, which has been told.</summary>
    public Unit? UnitOf(string column) => _columns.TryGetValue(column, out var c) ? c.Unit : null;

    /// <summary>Takes a cell of the header in; one that is not known, or stands there twice, is told.</summary>
    /// <param name="header">The row.</param>
    /// <param name="i">The cell, from 0.</param>
    /// <param name="plain">Columns without a unit.</param>
    /// <param name="measured">Columns with a unit.</param>
    /// <param name="others">What else is known here, for the hint.</param>
    /// <param name="problems">Where it is told.</param>
    protected void Add(CsvRow header, int i, IReadOnlyList<string> plain, IReadOnlyList<(string Column, UnitKind Kind)> measured, IEnumerable<string> others, ProblemList problems)
    {
        var title = header.Cells[i];
        var (name, unit) = HeaderUnit.Split(title);
        if (measured.FirstOrDefault(m => string.Equals(m.Column, name, StringComparison.OrdinalIgnoreCase)) is { Column: not null } found)
        {
            Put(found.Column, i, header.Line, MeasuredCell.UnitOf(unit, found.Kind, title, header.Line, i, problems), problems);
        }
        else if (Names.Find(plain, title) is { } column)
        {
            Put(column, i, header.Line, null, problems);
        }
        else
        {
            string[] known = [.. plain, .. measured.Select(m => m.Column), .. others];
            problems.Error(header.Line, i + 1, $"{Wording.Quote(title)} is not a column that is known here", Wording.DidYouMean(name, known, "known columns"));
        }
    }

    protected void Put(string column, int i, int line, Unit? unit, ProblemList problems)
    {
        if (!_columns.TryAdd(column, (i, unit)))
        {
            problems.Error(line, i + 1, $"the column {Wording.Quote(column)} stands there twice", "keep one of them");
        }
    }
}
