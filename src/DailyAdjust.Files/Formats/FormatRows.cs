using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>
/// Takes what a public format's reader finds, row by row: readings for the days, counts, and problems. Every row is counted once.
/// </summary>
internal sealed class FormatRows(string file, SiteClock clock, Action<ReadingDay> take)
{
    private readonly DayCollector _days = new(clock, take);
    private readonly ProblemLog _problems = new(file);
    private int _read;
    private int _setAside;
    private int _refused;
    private int _valuesSetAside;
    private readonly SortedDictionary<WeatherQuantity, int> _notUsed = [];
    private DateTimeOffset? _begin;
    private DateTimeOffset? _end;

    public SiteClock Clock => clock;

    /// <summary>Forecasts: when the file says that it was made, UTC; null = it does not say.</summary>
    public DateTimeOffset? Issued { get; set; }

    /// <summary>Rows of other stations, which are told of and counted nowhere else.</summary>
    public long PassedOver { get; set; }

    /// <summary>Nothing of the file is used; null = it is.</summary>
    public Problem? WholeFile { get; private set; }

    /// <summary>A row whose value is a number or is marked as missing; it goes into readings that are gathered from several rows.</summary>
    public void Row() => _read++;

    /// <summary>A row of such whose value is no number.</summary>
    public void RowSetAside()
    {
        _setAside++;
        _valuesSetAside++;
    }

    /// <summary>Readings that were gathered from several rows; the rows are counted by themselves.</summary>
    public void Add(IEnumerable<Reading> gathered)
    {
        foreach (var reading in gathered)
        {
            _begin = _begin < reading.Begin ? _begin : reading.Begin;
            _end = _end > reading.End ? _end : reading.End;
            _days.Add(reading);
        }
    }

    /// <summary>A row with all that was found in it.</summary>
    public void Row(RowValues row)
    {
        foreach (var reading in row.ToReadings())
        {
            foreach (var mark in reading.Marks.Where(m => m.Kind is MarkKind.FailedAtSource or MarkKind.IncompleteAtSource or MarkKind.SeveralDays))
            {
                _notUsed[mark.Quantity] = _notUsed.GetValueOrDefault(mark.Quantity) + 1;
            }
        }

        (_read, _setAside) = row.SetAside == 0 ? (_read + 1, _setAside) : (_read, _setAside + 1);
        _valuesSetAside += row.SetAside;
        Add(row.ToReadings());
    }

    /// <summary>A value that is not surely a number of its column; the rest of its row counts.</summary>
    public void SetAside(RowValues row, string name, int line, int column, ReadOnlySpan<char> text, string why, string hint)
    {
        row.SetAside++;
        var shown = Shown.Short(text);
        _problems.Add($"values of {name} that were set aside", line, column, Severity.Warning, () => ($"{name}: \"{shown}\" {why}; the value is set aside", hint));
    }

    /// <summary>A row that does not count at all.</summary>
    public void Refuse(string sort, int line, int column, string what, string hint)
    {
        _refused++;
        _problems.Add(sort, line, column, Severity.Error, () => (what, hint));
    }

    /// <summary>What is to be told beside a row that is counted elsewhere.</summary>
    public void Tell(string sort, int line, int column, string what, string hint) =>
        _problems.Add(sort, line, column, Severity.Warning, () => (what, hint));

    /// <summary>The columns of the file are not certain: nothing of it is used.</summary>
    public void RefuseFile(int line, int column, string what, string hint) =>
        WholeFile ??= new Problem(file, line, column, what, hint);

    /// <summary>After the last row.</summary>
    public ReadingsReport Finish()
    {
        if (WholeFile is { } why)
        {
            return new() { File = file, FileRefused = true, Problems = [why] };
        }

        _days.Finish();
        foreach (var (quantity, count) in _notUsed)
        {
            var name = QuantityName.Of(quantity);
            _problems.Add("values that the source marks", 1, 1, Severity.Warning, () => (
                FormattableString.Invariant($"{name}: {count} {(count == 1 ? "value is" : "values are")} not used, because the source marks {(count == 1 ? "it" : "them")} as failed, incomplete or of several days"),
                "these days count as missing there; `dailyadjust weather` shows the marks"));
        }

        if (_read + _setAside + _refused + PassedOver == 0)
        {
            _problems.Add("no rows", 1, 1, Severity.Warning, () => ("there are no rows in the file", "Nothing to do if the station has only begun it"));
        }

        return new()
        {
            File = file,
            RowsRead = _read,
            RowsSetAside = _setAside,
            RowsRefused = _refused,
            ValuesSetAside = _valuesSetAside,
            Begin = _begin,
            End = _end,
            Issued = Issued,
            Problems = _problems.ToList(),
        };
    }
}
