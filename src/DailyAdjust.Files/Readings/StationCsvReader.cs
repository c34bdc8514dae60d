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
    private readonly string file;
    private readonly WeatherSource source;
    private readonly ProblemLog problems;
    private readonly IntervalCheck interval;
    private readonly DayCollector days;
    private readonly List<Reading> undecided = [];
    private bool intervalFits;
    private int read;
    private int setAside;
    private int neverWas;
    private int valuesSetAside;
    private DateTimeOffset? begin;
    private DateTimeOffset? end;

    private StationCsvReader(string file, WeatherSource source, SiteClock clock, Action<ReadingDay> take)
    {
        (this.file, this.source) = (file, source);
        problems = new ProblemLog(file);
        interval = new IntervalCheck(source);
        days = new DayCollector(clock, take);
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
    /// <exception cref="IOException">The bytes could not be read.</exception>
    public static ReadingsReport Read(string file, Stream stream, WeatherSource source, SiteClock clock, Action<ReadingDay> take)
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
        return map is null ? Refused(file, faults) : new StationCsvReader(file, source, clock, take).Read(map, delimiter, lines, clock);
    }

    private ReadingsReport Read(ColumnMap map, char delimiter, LineReader lines, SiteClock clock)
    {
        var rows = new RowReader(map, source, lines, problems);
        var stamps = new Stamps(clock, source, Take, TakeNeverWas);
        var line = lines.Number;
        using (var text = new LineText(lines, rows.Refuse))
        using (var reader = Sep.New(delimiter).Reader(o => o with { HasHeader = false, DisableColCountCheck = true, Unescape = true }).From(text))
        {
            foreach (var row in reader)
            {
                line++;
                if (rows.Read(row, line) is { } stamped)
                {
                    stamps.Add(stamped);
                    if (!Decide(interval.IsDone))
                    {
                        return Refused(file, TooClose());
                    }
                }
            }
        }

        stamps.Finish();
        if (!Decide(true))
        {
            return Refused(file, TooClose());
        }

        days.Finish();
        if (read + setAside + neverWas + rows.Refused == 0)
        {
            problems.Add("no rows", line, 1, Severity.Warning, () => ("there are no rows below the header", "Nothing to do if the station has only begun the file"));
        }

        return new ReadingsReport
        {
            File = file,
            RowsRead = read,
            RowsSetAside = setAside + neverWas,
            RowsRefused = rows.Refused,
            ValuesSetAside = valuesSetAside,
            Begin = begin,
            End = end,
            Problems = problems.ToList(),
        };
    }

    private void Take(StampedRow row, DateTimeOffset rowBegin, DateTimeOffset rowEnd)
    {
        (read, setAside) = row.SetAside == 0 ? (read + 1, setAside) : (read, setAside + 1);
        valuesSetAside += row.SetAside;
        if (!intervalFits)
        {
            interval.Add(row.Line, rowBegin);
        }

        if (!row.HasValue)
        {
            return;
        }

        begin = begin < rowBegin ? begin : rowBegin;
        end = end > rowEnd ? end : rowEnd;
        var reading = row.ToReading(rowBegin, rowEnd);
        if (intervalFits)
        {
            days.Add(reading);
        }
        else
        {
            undecided.Add(reading);
        }
    }

    private void TakeNeverWas(StampedRow row)
    {
        neverWas++;
        valuesSetAside += row.SetAside;
        problems.Add("rows at a time that the clock skipped", row.Line, row.TimeColumn, Severity.Error, () => (
            FormattableString.Invariant($"{row.Stamp:yyyy-MM-dd HH:mm} is in the hour that the site's clock skipped; the row is set aside"),
            "If the station does not change its clock, write clock: standard or clock: utc in the column map"));
    }

    /// <summary>Lets the first readings go once their rows are known to be as far apart as the site says; false = they are not.</summary>
    private bool Decide(bool enough)
    {
        if (intervalFits || !enough)
        {
            return true;
        }

        if (interval.TooClose() is not null)
        {
            return false;
        }

        if (interval.TooFar() is { } far)
        {
            problems.Add("intervals", far.Line, 1, Severity.Warning, () => (far.What, far.Hint));
        }

        intervalFits = true;
        undecided.ForEach(days.Add);
        undecided.Clear();
        return true;
    }

    private IReadOnlyList<Problem> TooClose() =>
        interval.TooClose() is { } close ? [new Problem(file, close.Line, 1, close.What, close.Hint)] : [];

    private static ReadingsReport Refused(string file, IReadOnlyList<Problem> problems) =>
        new() { File = file, FileRefused = true, Problems = problems };
}
