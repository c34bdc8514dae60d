using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Readings;

/// <summary>One column of the file that carries a quantity.</summary>
/// <param name="Index">Which cell, from 0.</param>
/// <param name="Header">As the file spells it.</param>
internal sealed record ValueColumn(int Index, string Header, QuantityUnit Unit);

/// <summary>Where a file has what the site's column map asks for.</summary>
/// <param name="Cells">The header, cell by cell.</param>
/// <param name="Time">Which cell has the time (or the date), from 0.</param>
/// <param name="TimeOfDay">Which cell has the time of day; null = none apart.</param>
/// <param name="Values">In the order of the quantities.</param>
internal sealed record ColumnMap(IReadOnlyList<string> Cells, int Time, int? TimeOfDay, ValueColumn[] Values)
{
    /// <summary>Cells that a row must have: empty ones after the last named column do not count.</summary>
    public int Width { get; } = Cells.Count - Cells.Reverse().TakeWhile(string.IsNullOrWhiteSpace).Count();

    /// <summary>The header itself ends with empty cells.</summary>
    public bool HasCellsBehind => Width < Cells.Count;

    /// <summary>The headers that a site's map names, time first, then in the order of the quantities.</summary>
    public static IReadOnlyList<string> Wanted(WeatherSource source) =>
    [
        source.Time.Column,
        .. source.Time.TimeOfDayColumn is { } timeOfDay ? [timeOfDay] : Array.Empty<string>(),
        .. source.Columns.OrderBy(column => column.Key).Select(column => column.Value.Header),
    ];

    /// <summary>The map for this header, or the columns at which it fails: which, what and what to do.</summary>
    /// <param name="cells">The header, cell by cell.</param>
    /// <param name="source">The column map.</param>
    /// <param name="units">The line below the header where it holds the units; empty where it does not.</param>
    public static (ColumnMap? Map, IReadOnlyList<ColumnFault> Faults) Bind(IReadOnlyList<string> cells, WeatherSource source, IReadOnlyList<string> units)
    {
        var faults = new List<ColumnFault>();
        var time = Index(cells, source.Time.Column, faults);
        int? timeOfDay = source.Time.TimeOfDayColumn is { } wanted ? Index(cells, wanted, faults) : null;
        var values = new List<ValueColumn>();
        foreach (var (quantity, mapped) in source.Columns.OrderBy(column => column.Key))
        {
            var index = Index(cells, mapped.Header, faults);
            var below = index >= 0 && index < units.Count && units[index].Trim().Trim('[', ']', '(', ')') is { Length: > 0 } text ? text : null;
            if (index >= 0 && UnitOf(quantity, mapped, cells[index], below, index, source.IsDaily, faults) is { } unit)
            {
                values.Add(new ValueColumn(index, cells[index].Trim(), new QuantityUnit(quantity, unit, mapped.Counter)));
            }
        }

        return faults.Count > 0 ? (null, faults) : (new ColumnMap(cells, time, timeOfDay, [.. values]), faults);
    }

    private static int Index(IReadOnlyList<string> cells, string wanted, List<ColumnFault> faults)
    {
        var index = HeaderText.Find(cells, wanted);
        if (index == HeaderText.Absent)
        {
            faults.Add(new ColumnFault(1, $"the header has no column \"{wanted}\"", $"It has {Wording.Quoted([.. cells.Select(cell => cell.Trim())])}; correct the column map or the file"));
        }
        else if (index == HeaderText.Twice)
        {
            faults.Add(new ColumnFault(1, $"the header has \"{wanted}\" more than once", "Which of them is meant is not certain: give them different names"));
        }

        return index;
    }

    private static Unit? UnitOf(WeatherQuantity quantity, MappedColumn mapped, string header, string? below, int index, bool daily, List<ColumnFault> faults)
    {
        var written = HeaderUnit.Split(header).Unit ?? below;
        var fromHeader = written is null ? null : WeatherUnits.Find(written.Replace("\uFFFD", "", StringComparison.Ordinal), quantity, daily);
        var fromMap = mapped.Unit is null ? null : WeatherUnits.Find(mapped.Unit, quantity, daily);
        var usual = string.Join(", ", WeatherUnits.Kinds(quantity, daily).SelectMany(Units.Spellings));
        if (mapped.Unit is not null && fromMap is null)
        {
            faults.Add(new ColumnFault(index + 1, $"\"{mapped.Unit}\" is not a unit for the column \"{mapped.Header}\"", $"Use one of {usual}"));
            return null;
        }

        if (fromHeader is not null && fromMap is not null && fromHeader != fromMap)
        {
            faults.Add(new ColumnFault(index + 1, $"the header says {fromHeader.Symbol} in {Wording.Quote(header.Trim())} and the column map says {fromMap.Symbol}", "Correct the one that is wrong"));
            return null;
        }

        if ((fromMap ?? fromHeader) is not { } unit)
        {
            var what = written is null ? $"the column {Wording.Quote(header.Trim())} does not say its unit" : $"{Wording.Quote(written)} in {Wording.Quote(header.Trim())} is not a unit that it can have";
            faults.Add(new ColumnFault(index + 1, what, $"Give the unit in the column map, one of {usual}"));
            return null;
        }

        return unit;
    }
}

/// <summary>Why a header does not fit the column map.</summary>
/// <param name="Column">The cell, from 1.</param>
internal readonly record struct ColumnFault(int Column, string What, string Hint);
