using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Readings;

/// <summary>The interval that a row reports, from its stamp: by the clock that wrote it, at its start or end, or the calendar day of its date.</summary>
internal sealed class Stamps
{
    private readonly SiteClock _clock;
    private readonly WeatherSource _source;
    private readonly Action<StampedRow, DateTimeOffset, DateTimeOffset> _take;
    private readonly LocalStamps _local;

    /// <param name="clock">The site's.</param>
    /// <param name="source">Clock, meaning of the stamp and interval.</param>
    /// <param name="take">Takes each row with its interval, in file order.</param>
    /// <param name="refuse">Takes the rows whose time never was.</param>
    public Stamps(SiteClock clock, WeatherSource source, Action<StampedRow, DateTimeOffset, DateTimeOffset> take, Action<StampedRow> refuse)
    {
        (_clock, _source, _take) = (clock, source, take);
        _local = new LocalStamps(clock, source, (row, stamp) =>
        {
            if (stamp is { } instant)
            {
                TakeAt(row, instant);
            }
            else
            {
                refuse(row);
            }
        });
    }

    public void Add(StampedRow row)
    {
        if (_source.IsDaily)
        {
            var date = DateOf(row.Stamp);
            _take(row, _clock.DayStart(date), _clock.DayEnd(date));
        }
        else if (row.Stamp.Kind == DateTimeKind.Utc || _source.Time.Clock == StampClock.Utc)
        {
            TakeAt(row, new DateTimeOffset(DateTime.SpecifyKind(row.Stamp, DateTimeKind.Utc)));
        }
        else if (_source.Time.Clock == StampClock.Standard)
        {
            TakeAt(row, _clock.ToInstantStandard(DateOnly.FromDateTime(row.Stamp), TimeOnly.FromDateTime(row.Stamp)));
        }
        else
        {
            _local.Add(row);
        }
    }

    /// <summary>After the last row.</summary>
    public void Finish() => _local.Finish();

    private void TakeAt(StampedRow row, DateTimeOffset instant)
    {
        var begin = _source.Time.Stamp == StampMeaning.End ? instant - _source.Interval : instant;
        _take(row, begin, begin + _source.Interval);
    }

    /// <summary>The date as written; midnight at the end of its day belongs to the day that it ends, if the pattern has a time of day.</summary>
    private DateOnly DateOf(DateTime stamp)
    {
        var shown = stamp.Kind == DateTimeKind.Utc ? _clock.ToLocal(new DateTimeOffset(stamp)).DateTime : stamp;
        var endsDay = _source.Time.Stamp == StampMeaning.End && shown.TimeOfDay == TimeSpan.Zero
            && StampPattern.HasTimeOfDay(_source.Time.Pattern);
        return DateOnly.FromDateTime(endsDay ? shown.AddTicks(-1) : shown);
    }
}
