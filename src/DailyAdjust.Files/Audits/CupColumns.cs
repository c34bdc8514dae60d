using DailyAdjust.Core.Quantities;
using DailyAdjust.Files.Csv;

namespace DailyAdjust.Files.Audits;

/// <summary>The header of a file of catch cups: which columns stand where, and the unit in each one's brackets.</summary>
internal sealed class CupColumns
{
    public const string Where = "where";
    public const string Cup = "cup";
    public const string Volume = "volume";
    public const string Depth = "depth";
    public const string ThroatArea = "throat area";
    public const string ThroatDiameter = "throat diameter";
    public const string RunTime = "run time";
    public const string Wind = "wind speed";
    public const string Note = "note";

    private const string Page = "see docs/audit.md";

    private static readonly string[] Plain = [Where, Cup, Note];

    private static readonly (string Column, UnitKind Kind)[] Measured =
    [
        (Volume, UnitKind.Volume), (Depth, UnitKind.Depth), (ThroatArea, UnitKind.Area), (ThroatDiameter, UnitKind.Length), (RunTime, UnitKind.Duration), (Wind, UnitKind.Speed),
    ];

    private readonly Dictionary<string, (int At, Unit? Unit)> _columns = new(StringComparer.Ordinal);

    private CupColumns(CsvRow header)
    {
        Width = header.Cells.Count;
    }

    public int Width { get; }

    /// <summary>Volume or depth, whichever the file has.</summary>
    public string Caught => Has(Volume) ? Volume : Depth;

    /// <summary>Throat area or diameter, whichever the file has.</summary>
    public string Throat => Has(ThroatArea) ? ThroatArea : ThroatDiameter;

    /// <summary>The columns; null where rows cannot be read under this header, which is told.</summary>
    public static CupColumns? Read(CsvRow header, ProblemList problems)
    {
        var before = problems.Count;
        var columns = new CupColumns(header);
        for (var i = 0; i < header.Cells.Count; i++)
        {
            if (header.Cells[i].Length > 0)
            {
                columns.Add(header, i, problems);
            }
        }

        columns.CheckSet(header.Line, problems);
        return problems.Count == before ? columns : null;
    }

    public bool Has(string column) => _columns.ContainsKey(column);

    public string Cell(CsvRow row, string column) => _columns.TryGetValue(column, out var c) && c.At < row.Cells.Count ? row.Cells[c.At] : "";

    /// <summary>From 1.</summary>
    public int Place(string column) => _columns.TryGetValue(column, out var c) ? c.At + 1 : 1;

    public Unit UnitOf(string column) => _columns[column].Unit ?? throw new InvalidOperationException($"{column} has no unit.");

    private void Add(CsvRow header, int i, ProblemList problems)
    {
        var title = header.Cells[i];
        var (name, spelling) = HeaderUnit.Split(title);
        var measured = Array.Find(Measured, m => string.Equals(m.Column, name, StringComparison.OrdinalIgnoreCase));
        var column = measured.Column ?? Names.Find(Plain, title);
        if (column is null)
        {
            string[] known = [.. Plain, .. Measured.Select(m => m.Column)];
            problems.Error(header.Line, i + 1, $"{Wording.Quote(title)} is not a column that is known here", Wording.DidYouMean(name, known, "known columns"));
            return;
        }

        var unit = measured.Column is null ? null : MeasuredCell.UnitOf(spelling, measured.Kind, title, header.Line, i, problems);
        if (!_columns.TryAdd(column, (i, unit)))
        {
            problems.Error(header.Line, i + 1, $"the column {Wording.Quote(column)} stands there twice", "keep one of them");
        }
    }

    private void CheckSet(int line, ProblemList problems)
    {
        foreach (var column in new[] { Where, RunTime }.Where(c => !Has(c)))
        {
            problems.Error(line, 1, $"the column {Wording.Quote(column)} is missing", $"the first line names the columns; {Page}");
        }

        if (Has(Volume) == Has(Depth))
        {
            problems.Error(line, 1, Has(Volume) ? "the file has both volume and depth" : "neither volume nor depth is there", $"one of them says what each cup caught; {Page}");
        }
        else if (Has(Volume) && Has(ThroatArea) == Has(ThroatDiameter))
        {
            problems.Error(line, 1, Has(ThroatArea) ? "the file has both throat area and throat diameter" : "neither throat area nor throat diameter is there", $"a volume becomes a depth by one of them; {Page}");
        }
        else if (Has(Depth) && (Has(ThroatArea) || Has(ThroatDiameter)))
        {
            problems.Error(line, Place(Throat), $"a depth needs no {Throat}", "take the column out, or give volumes");
        }
    }
}
