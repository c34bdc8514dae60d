using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Readings;

/// <summary>The interval that a row reports, from its stamp: by the clock that wrote it, at its start or end, or the calendar day of its date.</summary>
internal sealed class Stamps
{
    private readonly SiteClock clock;
    private readonly WeatherSource source;
    private readonly Action<StampedRow, DateTimeOffset, DateTimeOffset> take;
    private readonly LocalStamps local;

    /// <param name="clock">The site's.</param>
    /// <param name="source">Clock, meaning of the stamp and interval.</param>
    /// <param name="take">Takes each row with its interval, in file order.</param>
    /// <param name="refuse">Takes the rows whose time never was.</param>
    public Stamps(SiteClock clock, WeatherSource source, Action<StampedRow, DateTimeOffset, DateTimeOffset> take, Action<StampedRow> refuse)
    {
        (this.clock, this.source, this.take) = (clock, source, take);
        local = new LocalStamps(clock, source, (row, stamp) =>
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
        if (source.IsDaily)
        {
            var date = DateOf(row.Stamp);
            take(row, clock.DayStart(date), clock.DayEnd(date));
        }
        else if (row.Stamp.Kind == DateTimeKind.Utc || source.Time.Clock == StampClock.Utc)
        {
            TakeAt(row, new DateTimeOffset(DateTime.SpecifyKind(row.Stamp, DateTimeKind.Utc)));
        }
        else if (source.Time.Clock == StampClock.Standard)
        {
            TakeAt(row, clock.ToInstantStandard(DateOnly.FromDateTime(row.Stamp), TimeOnly.FromDateTime(row.Stamp)));
        }
        else
        {
            local.Add(row);
        }
    }

    /// <summary>After the last row.</summary>
    public void Finish() => local.Finish();

    private void TakeAt(StampedRow row, DateTimeOffset instant)
    {
        var begin = source.Time.Stamp == StampMeaning.End ? instant - source.Interval : instant;
        take(row, begin, begin + source.Interval);
    }

    /// <summary>The date as written; midnight at the end of its day belongs to the day that it ends, if the pattern has a time of day.</summary>
    private DateOnly DateOf(DateTime stamp)
    {
        var shown = stamp.Kind == DateTimeKind.Utc ? clock.ToLocal(new DateTimeOffset(stamp)).DateTime : stamp;
        var endsDay = source.Time.Stamp == StampMeaning.End && shown.TimeOfDay == TimeSpan.Zero
            && StampPattern.HasTimeOfDay(source.Time.Pattern);
        return DateOnly.FromDateTime(endsDay ? shown.AddTicks(-1) : shown);
    }
}
