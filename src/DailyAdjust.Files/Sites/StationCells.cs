using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Csv;

namespace DailyAdjust.Files.Sites;

/// <summary>Cells of stations.csv by station and column, to be written anew.</summary>
internal sealed class StationCells(CsvEdit edit, CsvRow header, StationColumns columns, UnitSystem units)
{
    /// <summary>Columns that were added behind those of the header: place from 0 and header.</summary>
    private readonly Dictionary<string, (int At, string Title)> _added = new(StringComparer.Ordinal);

    private readonly List<CellChange> _changes = [];

    public IReadOnlyList<CellChange> Changes => _changes;

    public string Text => edit.ToString();

    public bool IsOf(CsvRow row, StationKey station) =>
        Same(columns.Cell(row, StationColumns.Controller), station.Controller) && Same(columns.Cell(row, StationColumns.Station), station.Station);

    /// <summary>Writes a cell unless it says the same already.</summary>
    /// <param name="row">The station's.</param>
    /// <param name="station">The station.</param>
    /// <param name="column">One of <see cref="StationColumns"/>.</param>
    /// <param name="text">What it is to say, in the column's unit.</param>
    public void Set(CsvRow row, StationKey station, string column, Func<Unit, string> text)
    {
        var old = columns.Cell(row, column);
        var written = text(UnitOf(column));
        if (Same(old, written) || (NumberText.TryParse(old, out var before) && NumberText.TryParse(written, out var after) && before == after))
        {
            return;
        }

        var (at, title) = Find(column);
        edit.Set(row.Line, at, written);
        _changes.Add(new(station, row.Line, title, old, written));
    }

    private (int At, string Title) Find(string column)
    {
        if (columns.Has(column))
        {
            return (columns.Place(column) - 1, header.Cells[columns.Place(column) - 1]);
        }

        if (!_added.TryGetValue(column, out var added))
        {
            var title = string.Equals(column, StationColumns.RateKnown, StringComparison.Ordinal) ? column : $"{column} ({UnitOf(column).Symbol})";
            added = (columns.Width + _added.Count, title);
            edit.Set(header.Line, added.At, title);
            _added.Add(column, added);
        }

        return added;
    }

    /// <summary>The header's unit, else the site's.</summary>
    private Unit UnitOf(string column) => columns.UnitOf(column) ?? (string.Equals(column, StationColumns.Rate, StringComparison.Ordinal)
        ? Units.Find(units == UnitSystem.Us ? "in/h" : "mm/h", UnitKind.DepthRate)!
        : Units.Find("%", UnitKind.Percent)!);

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
