using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using nietras.SeparatedValues;

namespace DailyAdjust.Files.Readings;

/// <summary>
/// Reads a station's CSV by the site's column map, as a stream: memory does not grow with the file. Nothing in a file makes
/// it throw, and nothing that is not surely a number becomes one.
/// </summary>
public sealed class StationCsvReader
{
    /// <summary>Bytes before the new ones that are read again: more than the day or two that a clock change or a running total needs.</summary>
    private const int Overlap = 64 * 1024;

    /// <summary>A smaller beginning is read again whole.</summary>
    private const int FewestKnown = 4 * Overlap;

    private readonly string _file;
    private readonly WeatherSource _source;
    private readonly ProblemLog _problems;
    private readonly IntervalCheck _interval;
    private readonly DayCollector _days;
    private readonly List<Reading> _undecided = [];
    private bool _intervalFits;
    private int _read;
    private int _setAside;
    private int _neverWas;
    private int _valuesSetAside;
    private DateTimeOffset? _begin;
    private DateTimeOffset? _end;

    private StationCsvReader(string file, WeatherSource source, SiteClock clock, Action<ReadingDay> take)
    {
        (_file, _source) = (file, source);
        _problems = new ProblemLog(file);
        _interval = new IntervalCheck(source);
        _days = new DayCollector(clock, take);
    }

    /// <summary>Reads a whole file.</summary>
    /// <param name="file">Its name, for the problems.</param>
    /// <param name="stream">Its bytes from the first on; is left open.</param>
    /// <param name="source">The column map.</param>
    /// <param name="clock">The site's clock.</param>
    /// <param name="take">
    /// Takes the readings day by day, ascending as long as the file is. Where rows are far out of order, a day
    /// comes again with its later rows: <see cref="ReadingMerge"/> joins them, the later over the earlier.
    /// Not called for a file that is refused.
    /// </param>
    /// <param name="known">
    /// How many bytes of its beginning were read before: the rows that end in them are neither counted nor told again, and but for the last
    /// of them (whose days the new rows go on with) not even read.
    /// </param>
    /// <exception cref="IOException">The bytes could not be read.</exception>
    public static ReadingsReport Read(string file, Stream stream, WeatherSource source, SiteClock clock, Action<ReadingDay> take, long known = 0)
    {
        if (StampPattern.Fault(source.Time.Pattern, source.IsDaily) is { } fault)
        {
            return Refused(file, [new Problem(file, 1, 1, fault, "Correct the pattern in the column map")]);
        }

        var text = new DecodedText(stream);
        if (text.NotText is { } why)
        {
            return Refused(file, [new Problem(file, 1, 1, why, "Nothing was read from it; a text file with a header is needed")]);
        }

        var lines = new LineReader(text);
        var (map, delimiter, faults) = HeaderSearch.Find(file, lines, source);
        if (map is null)
        {
            return Refused(file, faults);
        }

        var reader = new StationCsvReader(file, source, clock, take);
        if (known >= FewestKnown && lines.SkipTo(new(known, known - Overlap, lines.Number, source.Time.Column.Trim())) is { } firstNew)
        {
            reader._problems.FirstLine = firstNew;
        }

        return reader.Read(map, delimiter, lines, clock);
    }

    private ReadingsReport Read(ColumnMap map, char delimiter, LineReader lines, SiteClock clock)
    {
        var rows = new RowReader(map, _source, lines, _problems);
        var stamps = new Stamps(clock, _source, Take, TakeNeverWas);
        var line = lines.Number;
        using (var text = new LineText(lines, delimiter, rows.Refuse))
        using (var reader = Sep.New(delimiter).Reader(o => o with { HasHeader = false, DisableColCountCheck = true, Unescape = true }).From(text))
        {
            foreach (var row in reader)
            {
                line++;
                if (rows.Read(row, line) is { } stamped)
                {
                    stamps.Add(stamped);
                    if (!Decide(_interval.IsDone))
                    {
                        return Refused(_file, TooClose());
                    }
                }
            }
        }

        stamps.Finish();
        if (!Decide(true))
        {
            return Refused(_file, TooClose());
        }

        _days.Finish();
        if (_read + _setAside + _neverWas + rows.Refused == 0)
        {
            _problems.Add("no rows", line, 1, Severity.Warning, () => ("there are no rows below the header", "Nothing to do if the station has only begun the file"));
        }

        return new ReadingsReport
        {
            File = _file,
            RowsRead = _read,
            RowsSetAside = _setAside + _neverWas,
            RowsRefused = rows.Refused,
            ValuesSetAside = _valuesSetAside,
            Begin = _begin,
            End = _end,
            Problems = _problems.ToList(),
        };
    }

    private void Take(StampedRow row, DateTimeOffset rowBegin, DateTimeOffset rowEnd)
    {
        if (row.Line >= _problems.FirstLine)
        {
            (_read, _setAside) = row.SetAside == 0 ? (_read + 1, _setAside) : (_read, _setAside + 1);
            _valuesSetAside += row.SetAside;
        }

        if (!_intervalFits)
        {
            _interval.Add(row.Line, rowBegin);
        }

        if (!row.HasValue)
        {
            return;
        }

        _begin = _begin < rowBegin ? _begin : rowBegin;
        _end = _end > rowEnd ? _end : rowEnd;
        var reading = row.ToReading(rowBegin, rowEnd);
        if (_intervalFits)
        {
            _days.Add(reading);
        }
        else
        {
            _undecided.Add(reading);
        }
    }

    private void TakeNeverWas(StampedRow row)
    {
        _neverWas += row.Line >= _problems.FirstLine ? 1 : 0;
        _valuesSetAside += row.Line >= _problems.FirstLine ? row.SetAside : 0;
        _problems.Add("rows at a time that the clock skipped", row.Line, row.TimeColumn, Severity.Error, () => (
            FormattableString.Invariant($"{row.Stamp:yyyy-MM-dd HH:mm} is in the hour that the site's clock skipped; the row is set aside"),
            "If the station does not change its clock, write clock: standard or clock: utc in the column map"));
    }

    /// <summary>Lets the first readings go once their rows are known to be as far apart as the site says; false = they are not.</summary>
    private bool Decide(bool enough)
    {
        if (_intervalFits || !enough)
        {
            return true;
        }

        if (_interval.TooClose() is not null)
        {
            return false;
        }

        if (_interval.TooFar() is { } far)
        {
            _problems.Add("intervals", far.Line, 1, Severity.Warning, () => (far.What, far.Hint));
        }

        _intervalFits = true;
        _undecided.ForEach(_days.Add);
        _undecided.Clear();
        return true;
    }

    private IReadOnlyList<Problem> TooClose() =>
        _interval.TooClose() is { } close ? [new Problem(_file, close.Line, 1, close.What, close.Hint)] : [];

    private static ReadingsReport Refused(string file, IReadOnlyList<Problem> problems) =>
        new() { File = file, FileRefused = true, Problems = problems };
}
