using DailyAdjust.Core.Sites;
using nietras.SeparatedValues;

namespace DailyAdjust.Files.Readings;

/// <summary>Rows to stamps and values. A row that cannot be placed in time is refused; a value that is no number is set aside and the rest of its row counts.</summary>
internal sealed class RowReader(ColumnMap header, WeatherSource source, LineReader lines, ProblemLog problems)
{
    private const int WidestHeader = 1000;

    private readonly StampPattern _pattern = new(source);
    private readonly MissingMarks _missing = new(source.Missing);
    private readonly OpenEnd _openEnd = new(source.DecimalComma);
    private ColumnMap? _map = header;
    private int _mapLine;
    private bool _endsWithDelimiter;
    private string[]? _withoutUnits;
    private StampedRow? _row;

    /// <summary>Rows refused so far.</summary>
    public int Refused { get; private set; }

    /// <summary>The row with its values, until the next is read; null where it is blank, a header, or refused.</summary>
    public StampedRow? Read(SepReader.Row row, int line)
    {
        if (IsBlank(row) || IsUnitLine(row, line))
        {
            return null;
        }

        var open = line == lines.OpenLine;
        if (_map is null || !HasWidth(row, _map) || !TryStamp(row, _map, open, out var stamp))
        {
            if (!IsHeader(row, line))
            {
                Refuse(row, line, open);
            }

            return null;
        }

        var stamped = _row is { IsKept: false } last && ReferenceEquals(last.Map, _map) ? last : _row = new StampedRow(_map);
        stamped.Begin(line, stamp);
        for (var i = 0; i < _map.Values.Length; i++)
        {
            var column = _map.Values[i];
            var cell = row[column.Index].Span.Trim();
            var isLast = column.Index == row.ColCount - 1;
            if (_missing.Contains(cell))
            {
                continue;
            }

            if (!CellNumber.TryParse(cell, source.DecimalComma, out var value))
            {
                if (CellNumber.LooksLikeTwo(cell))
                {
                    RefuseUncertain(column, line, Shown.Short(cell));
                    return null;
                }

                SetAside(stamped, column, Shown.Short(cell), "is not a number", WhyNoNumber(cell));
            }
            else if (_missing.Contains(value))
            {
                continue;
            }
            else if (isLast && open && row.Span is not [.., '"'] && !_openEnd.IsWhole(cell))
            {
                SetAside(stamped, column, Shown.Short(cell), "may be cut: the file ends without ending this line", "End the last line, or drop the file again when it is complete");
            }
            else
            {
                stamped.Put(i, value);
                if (isLast)
                {
                    _openEnd.Add(cell);
                }
            }
        }

        return stamped;
    }

    /// <summary>A line that is no row at all.</summary>
    public void Refuse(int line, LineFault fault)
    {
        Refused += line >= problems.FirstLine ? 1 : 0;
        problems.Add("lines that cannot be split into cells", line, 1, Severity.Error, () => fault switch
        {
            LineFault.TooLong => (FormattableString.Invariant($"the line is longer than {LineReader.LongestLine} characters"), "The row is not used"),
            LineFault.NotText => ("the line holds bytes that are no text", "The row is not used; stations leave such lines after a loss of power"),
            _ => ("a quote in this line is not closed", "The row is not used; a quoted text may not go on in the next line"),
        });
    }

    private bool TryStamp(SepReader.Row row, ColumnMap columns, bool open, out DateTime stamp)
    {
        stamp = default;
        var lastCell = row.ColCount - 1;
        return !(open && (columns.Time == lastCell || columns.TimeOfDay == lastCell))
            && _pattern.TryParse(
                row[columns.Time].Span.Trim(), columns.TimeOfDay is { } timeOfDay ? row[timeOfDay].Span.Trim() : [], out stamp);
    }

    private void Refuse(SepReader.Row row, int line, bool open)
    {
        Refused += line >= problems.FirstLine ? 1 : 0;
        if (_map is not { } columns)
        {
            problems.Add("rows below a header that does not fit", line, 1, Severity.Error, () => (
                FormattableString.Invariant($"which column is which is not certain below line {_mapLine}"), "The row is not used"));
            return;
        }

        var count = row.ColCount;
        if (!HasWidth(row, columns))
        {
            problems.Add("rows of another width than the header", line, Math.Min(count, columns.Width + 1), Severity.Error, () => open && count < columns.Width
                ? ("the file ends in the middle of this line", "The row is not used; drop the file again when it is complete")
                : (FormattableString.Invariant($"the row has {count} cells and the header has {columns.Width}"), "The row is not used; is a number written with the delimiter in it, or a line cut?"));
            return;
        }

        var text = Shown.Short(row[columns.Time].Span.Trim());
        text = columns.TimeOfDay is { } timeOfDay ? text + " " + Shown.Short(row[timeOfDay].Span.Trim()) : text;
        problems.Add("rows without a time that can be read", line, columns.Time + 1, Severity.Error, () => open && TimeEnds(columns, count)
            ? ("the time may be cut: the file ends without ending this line", "The row is not used; drop the file again when it is complete")
            : ($"\"{text}\" is not a time as the pattern \"{source.Time.Pattern}\" writes it", $"The row is not used; a time looks like \"{_pattern.Example}\""));
    }

    private void RefuseUncertain(ValueColumn column, int line, string text)
    {
        Refused += line >= problems.FirstLine ? 1 : 0;
        problems.Add("rows whose columns are not certain", line, column.Index + 1, Severity.Error, () => (
            $"{column.Header}: \"{text}\" looks like two numbers that run together: which value is in which column is not certain", "The row is not used; get the file again"));
    }

    private static bool TimeEnds(ColumnMap columns, int count) => columns.Time == count - 1 || columns.TimeOfDay == count - 1;

    private void SetAside(StampedRow row, ValueColumn column, string text, string why, string hint)
    {
        row.SetAside++;
        problems.Add(
            $"values of {column.Header} that were set aside", row.Line, column.Index + 1, Severity.Warning,
            () => ($"{column.Header}: \"{text}\" {why}; the value is set aside", hint));
    }

    private string WhyNoNumber(ReadOnlySpan<char> cell)
    {
        if (cell.ContainsAnyInRange('0', '9') && cell.IndexOfAny('.', ',') >= 0)
        {
            return source.DecimalComma
                ? "The column map says that numbers have a decimal comma; a point, or a mark between thousands, is not taken"
                : "Numbers have a decimal point and no mark between thousands, unless the column map says decimal: comma; a map that is put right reads days gone by again where site: says correct: true";
        }

        return "If it stands for a missing value, name it under missing in the column map";
    }

    /// <summary>A header again (files put one after another): the same is passed over, another one is read anew, and if it does not fit, rows below it are not certain.</summary>
    private bool IsHeader(SepReader.Row row, int line)
    {
        var cells = new string[Math.Min(row.ColCount, WidestHeader)];
        for (var i = 0; i < cells.Length; i++)
        {
            cells[i] = row[i].ToString();
        }

        if (HeaderText.Find(cells, source.Time.Column) == HeaderText.Absent)
        {
            return false;
        }

        if (source.UnitsBelow)
        {
            _withoutUnits = cells;
            return true;
        }

        TakeHeader(cells, [], line);
        return true;
    }

    /// <summary>The line below a repeated header, where units stand in it.</summary>
    private bool IsUnitLine(SepReader.Row row, int line)
    {
        if (_withoutUnits is not { } header)
        {
            return false;
        }

        _withoutUnits = null;
        var units = new string[Math.Min(row.ColCount, WidestHeader)];
        for (var i = 0; i < units.Length; i++)
        {
            units[i] = row[i].ToString();
        }

        TakeHeader(header, units, line - 1);
        return true;
    }

    private void TakeHeader(IReadOnlyList<string> cells, IReadOnlyList<string> units, int line)
    {
        (_map, var faults) = ColumnMap.Bind(cells, source, units);
        _mapLine = line;
        foreach (var fault in faults)
        {
            problems.Add("headers that do not fit", line, fault.Column, Severity.Error, () => (fault.What, fault.Hint));
        }
    }

    /// <summary>
    /// As many cells as the header, and empty ones behind them. Stations that end their rows with delimiters do so in all of them: a row that
    /// alone does so may have lost the last digit of a number to one.
    /// </summary>
    private bool HasWidth(SepReader.Row row, ColumnMap columns)
    {
        if (row.ColCount > columns.Width && !_endsWithDelimiter)
        {
            _endsWithDelimiter = columns.HasCellsBehind || lines.NextEndsLike(row.Span);
            if (!_endsWithDelimiter)
            {
                return false;
            }
        }

        for (var i = columns.Width; i < row.ColCount; i++)
        {
            if (!row[i].Span.IsWhiteSpace())
            {
                return false;
            }
        }

        return row.ColCount >= columns.Width;
    }

    /// <summary>Nothing in any cell; U+001A is what old systems end a file with.</summary>
    private static bool IsBlank(SepReader.Row row)
    {
        for (var i = 0; i < row.ColCount; i++)
        {
            if (!row[i].Span.Trim('\u001A').IsWhiteSpace())
            {
                return false;
            }
        }

        return true;
    }
}
