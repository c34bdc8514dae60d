using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Readings;

/// <summary>
/// The instants behind stamps of a clock with summer time. Rows near a change of the clock are looked at together, in file
/// order: where the times go back, the first pass of the repeated hour ends and the second begins.
/// </summary>
/// <remarks>
/// A stamp at the end of its interval may be written as the clock shows it at that moment (after 01:50 comes 01:00 again, the
/// last of the night is 02:00) or counted on from the interval's beginning (after 01:50 comes 02:00, then 01:10 again). Both are read:
/// in each the times go back once, and each pass keeps its own offset.
/// </remarks>
/// <param name="clock">The site's.</param>
/// <param name="source">Interval and meaning of the stamp.</param>
/// <param name="take">Takes every row with the instant of its stamp; null = the site's clock never showed that time.</param>
internal sealed class LocalStamps(SiteClock clock, WeatherSource source, Action<StampedRow, DateTimeOffset?> take)
{
    /// <summary>Far more rows than two hours have; a file that repeats one time for ever must not fill the memory.</summary>
    private const int LongestRun = 4096;

    private readonly List<StampedRow> _run = [];
    private readonly bool _atEnd = source.Time.Stamp == StampMeaning.End;
    private (DateOnly Date, TimeSpan? Offset) _day = (DateOnly.MinValue, null);
    private DateTime? _before;

    public void Add(StampedRow row)
    {
        var plain = PlainOffset(row.Stamp);
        if (plain is null && IsNearChange(row.Stamp))
        {
            if (_run.Count == LongestRun || (_run.Count > 0 && (row.Stamp - _run[0].Stamp).Duration() > TimeSpan.FromDays(1)))
            {
                Flush(row.Stamp);
            }

            row.IsKept = true;
            _run.Add(row);
            return;
        }

        Flush(row.Stamp);
        take(row, plain is { } offset ? new DateTimeOffset(row.Stamp, offset).ToUniversalTime() : Instants(row.Stamp)[0]);
        _before = row.Stamp;
    }

    /// <summary>After the last row.</summary>
    public void Finish() => Flush(null);

    private void Flush(DateTime? after)
    {
        if (_run.Count == 0)
        {
            return;
        }

        if (_run.Exists(row => clock.IsSkipped(row.Stamp) || (_atEnd && clock.IsSkipped(row.Stamp - source.Interval))))
        {
            _run.ForEach(row => take(row, AcrossGap(row.Stamp)));
        }
        else
        {
            TakeRepeated(after);
        }

        _before = _run[^1].Stamp;
        _run.Clear();
    }

    /// <summary>A skipped time is no time, but one counted on from an interval's beginning up to the change, if no row claims that end.</summary>
    private DateTimeOffset? AcrossGap(DateTime stamp)
    {
        if (!clock.IsSkipped(stamp))
        {
            return Instants(stamp)[0];
        }

        var begin = stamp - source.Interval;
        if (!_atEnd || clock.IsSkipped(begin))
        {
            return null;
        }

        var end = Instants(begin)[0] + source.Interval;
        var shown = clock.ToLocal(end).DateTime;
        return _run.Exists(row => row.Stamp == shown) ? null : end;
    }

    private void TakeRepeated(DateTime? after)
    {
        // Newest first is read from the end: then the same rules hold.
        var newestFirst = IsNewestFirst(after);
        var times = _run.ConvertAll(row => row.Stamp);
        if (newestFirst)
        {
            times.Reverse();
        }

        var (earlier, later) = newestFirst ? (after, _before) : (_before, after);
        var second = SecondPass(times);

        // One pass only: the first, unless that were less than an interval after the row before, or the file
        // begins within the pass and runs on into the hours after.
        var isSecond = earlier is { } stamp ? Instants(times[0])[0] - Instants(stamp)[0] < source.Interval : later is not null;
        var onlyPass = isSecond ? 1 : 0;
        for (var i = 0; i < _run.Count; i++)
        {
            var order = newestFirst ? _run.Count - 1 - i : i;
            int? pass = second is { } at ? (order >= at ? 1 : 0) : null;
            take(_run[i], Instant(times[order], pass, onlyPass));
        }
    }

    private DateTimeOffset Instant(DateTime stamp, int? pass, int onlyPass)
    {
        var instants = Instants(stamp);
        if (instants.Count > 1)
        {
            return instants[pass ?? onlyPass];
        }

        return pass == 0 && _atEnd ? Instants(stamp - source.Interval)[0] + source.Interval : instants[0];
    }

    /// <summary>Where the times go back furthest; where one interval fills the whole repeated hour, the same time twice will do. Null = they never do.</summary>
    private int? SecondPass(List<DateTime> times)
    {
        int? found = null;
        var furthest = TimeSpan.Zero;
        for (var i = 1; i < times.Count; i++)
        {
            var back = times[i - 1] - times[i];
            if (back > furthest || (back == TimeSpan.Zero && found is null && source.Interval >= RepeatedFor(times[i])))
            {
                (found, furthest) = (i, back);
            }
        }

        return found;
    }

    private bool IsNewestFirst(DateTime? after)
    {
        if (_before is { } first)
        {
            return _run[0].Stamp < first;
        }

        if (after is { } last)
        {
            return last < _run[^1].Stamp;
        }

        return Enumerable.Range(1, _run.Count - 1).Sum(i => Math.Sign((_run[i - 1].Stamp - _run[i].Stamp).Ticks)) > 1;
    }

    private TimeSpan RepeatedFor(DateTime stamp)
    {
        var instants = Instants(stamp);
        instants = instants.Count > 1 ? instants : Instants(stamp - source.Interval);
        return instants[^1] - instants[0];
    }

    private bool IsNearChange(DateTime stamp) =>
        Changes(stamp) || (_atEnd && Changes(stamp - source.Interval));

    private bool Changes(DateTime local) => clock.IsSkipped(local) || Instants(local).Count > 1;

    private IReadOnlyList<DateTimeOffset> Instants(DateTime local) => clock.AllInstants(local);

    /// <summary>The one offset of a date far from any change; null near one.</summary>
    private TimeSpan? PlainOffset(DateTime stamp)
    {
        var date = DateOnly.FromDateTime(stamp);
        if (_day.Date != date)
        {
            var offset = clock.OffsetAt(clock.DayStart(date.AddDays(-1)));
            _day = (date, offset == clock.OffsetAt(clock.DayEnd(date.AddDays(1))) ? offset : null);
        }

        return _day.Offset;
    }
}
