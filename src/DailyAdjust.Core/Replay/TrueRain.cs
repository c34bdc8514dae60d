using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Replay;

/// <summary>The rain that fell, as a forecast that is never wrong.</summary>
internal static class TrueRain
{
    /// <summary>As far as a sheet looks ahead for rain.</summary>
    private const int DaysAhead = 8;

    /// <param name="site">The site; the rain of its first gauge is what is forecast.</param>
    /// <param name="weather">Consecutive days.</param>
    /// <param name="date">The morning's.</param>
    /// <param name="asOf">Rain before it is no longer to come.</param>
    public static IReadOnlyList<ForecastDay> Ahead(Site site, WeatherDay[] weather, DateOnly date, DateTimeOffset asOf)
    {
        var days = new List<ForecastDay>();
        for (var i = date.DayNumber - weather[0].Date.DayNumber; i < weather.Length && days.Count < DaysAhead; i++)
        {
            days.Add(new ForecastDay(weather[i].Date, null, null) { Rain = [.. SpansOf(site, weather[i]).Select(s => s.Within(asOf, DateTimeOffset.MaxValue)).OfType<RainAhead>()] });
        }

        return days;
    }

    /// <summary>A day's total spreads over its day; an interval's rain lies in the hour before its end.</summary>
    private static IEnumerable<RainAhead> SpansOf(Site site, WeatherDay day)
    {
        var begin = site.Clock.DayStart(day.Date);
        var from = begin;
        foreach (var fall in day.RainAt(site.Weather.Gauges[0].Id).Falls)
        {
            if (fall.At <= begin)
            {
                yield return new RainAhead(begin, site.Clock.DayEnd(day.Date), fall.Mm, 100);
                continue;
            }

            var hourBefore = fall.At.AddHours(-1);
            from = hourBefore > from ? hourBefore : from;
            yield return new RainAhead(from, fall.At, fall.Mm, 100);
            from = fall.At;
        }
    }
}
