using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Files.Readings;

/// <summary>Gathers readings by the site's calendar day, and hands days out before they fill the memory.</summary>
internal sealed class DayCollector(SiteClock clock, Action<ReadingDay> take)
{
    private const int MostReadings = 40_000;

    private readonly SortedDictionary<DateOnly, List<Reading>> days = [];
    private (DateTimeOffset Begin, DateTimeOffset End, List<Reading> Readings) day;
    private int count;

    public void Add(Reading reading)
    {
        if (reading.Begin < day.Begin || reading.Begin >= day.End)
        {
            var date = clock.DateOf(reading.Begin);
            if (!days.TryGetValue(date, out var readings))
            {
                // A new day begins: the right moment to give out what has gathered, whole days if the file is in order.
                Flush(MostReadings);
                days.Add(date, readings = []);
            }

            day = (clock.DayStart(date), clock.DayEnd(date), readings);
        }

        day.Readings.Add(reading);
        count++;
        if (count >= 2 * MostReadings)
        {
            Flush(0);
        }
    }

    /// <summary>After the last reading.</summary>
    public void Finish() => Flush(0);

    private void Flush(int unlessFewer)
    {
        if (count < unlessFewer)
        {
            return;
        }

        foreach (var (date, readings) in days)
        {
            take(new ReadingDay(date, ReadingMerge.Merge([readings])));
        }

        days.Clear();
        (day, count) = (default, 0);
    }
}
