using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Files.Readings;

/// <summary>Gathers readings by the site's calendar day, and hands days out before they fill the memory.</summary>
internal sealed class DayCollector(SiteClock clock, Action<ReadingDay> take)
{
    /// <summary>While rows come in order, more would only lie in memory.</summary>
    private const int EnoughInOrder = 2_000;

    private const int MostReadings = 40_000;
    private const int HoursOfDay = 24;

    private readonly SortedDictionary<DateOnly, List<Reading>> _days = [];
    private (DateTimeOffset Begin, DateTimeOffset End, List<Reading> Readings) _day;
    private (DateOnly First, DateOnly Last)? _given;
    private int _enough = EnoughInOrder;
    private int _count;

    public void Add(Reading reading)
    {
        if (reading.Begin < _day.Begin || reading.Begin >= _day.End)
        {
            var date = clock.DateOf(reading.Begin);
            if (!_days.TryGetValue(date, out var readings))
            {
                // A new day begins: the right moment to give out what has gathered, whole days if the file is in order.
                Flush(_enough);
                if (_given is { } given && date >= given.First && date <= given.Last)
                {
                    _enough = MostReadings;
                }

                _days.Add(date, readings = new List<Reading>(HoursOfDay));
            }

            _day = (clock.DayStart(date), clock.DayEnd(date), readings);
        }

        _day.Readings.Add(reading);
        _count++;
        if (_count >= 2 * MostReadings)
        {
            Flush(0);
        }
    }

    /// <summary>After the last reading.</summary>
    public void Finish() => Flush(0);

    private void Flush(int unlessFewer)
    {
        if (_count < unlessFewer)
        {
            return;
        }

        foreach (var (date, readings) in _days)
        {
            take(new ReadingDay(date, ReadingMerge.Merge([readings])));
            _given = _given is { } given ? (date < given.First ? date : given.First, date > given.Last ? date : given.Last) : (date, date);
        }

        _days.Clear();
        (_day, _count) = (default, 0);
    }
}
