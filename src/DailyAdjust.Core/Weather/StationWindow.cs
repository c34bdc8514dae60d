using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather.Checks;

namespace DailyAdjust.Core.Weather;

/// <summary>
/// What one station knows around one day, cleaned: readings of the day and of the hours around it that the day looks at
/// (before: the held cloud factor and the gaps; after: gaps), each quantity as a series with its short gaps filled.
/// </summary>
internal sealed class StationWindow
{
    /// <summary>A cloud factor is held for a day at most, from an hour whose radiation may itself lie in a short gap.</summary>
    public static readonly TimeSpan Before = TimeSpan.FromHours(30);

    /// <summary>A gap of up to 3 hours ends within 3 hours.</summary>
    public static readonly TimeSpan After = ShortGaps.Longest;

    private readonly Dictionary<WeatherQuantity, IReadOnlyList<Sample>> _series = [];
    private readonly List<Reading> _readings;
    private readonly CheckNotes _notes;

    private StationWindow(List<Reading> readings, CheckNotes notes, SolarDay solar, IReadOnlyList<SetAsideValue> setAside, int wetHumidities)
    {
        Site = notes.Site;
        Source = notes.Source;
        Day = notes.Day;
        Sun = notes.Sun;
        Solar = solar;
        _readings = readings;
        _notes = notes;
        SetAside = setAside;
        WetHumidities = wetHumidities;
        OfDay = [.. readings.Where(r => Day.Holds(r.Begin))];
    }

    public Site Site { get; }

    public WeatherSource Source { get; }

    public DaySpan Day { get; }

    public SunOfDay Sun { get; }

    /// <summary>The day's radiation as the sensor has it.</summary>
    public SolarDay Solar { get; }

    /// <summary>Cleaned readings that begin in the day.</summary>
    public IReadOnlyList<Reading> OfDay { get; }

    /// <summary>Values of the day that were set aside.</summary>
    public IReadOnlyList<SetAsideValue> SetAside { get; }

    /// <summary>Intervals of the day of which it is not known how much rain fell, though the gauge said something.</summary>
    public IReadOnlyList<(DateTimeOffset Begin, DateTimeOffset End)> RainAside => _notes.RainAside;

    /// <summary>Readings of the day whose humidity above 100 % counts as 100 %.</summary>
    public int WetHumidities { get; }

    /// <summary>From 00:00, or for hourly readings from the minute at which they begin.</summary>
    public DateTimeOffset FirstInterval => OfDay.Count > 0 && !Source.IsDaily
        ? Day.Begin + TimeSpan.FromTicks((OfDay[0].Begin - Day.Begin).Ticks % Source.Interval.Ticks)
        : Day.Begin;

    /// <param name="all">The station's readings, ascending.</param>
    /// <param name="asOf">Readings that end later are not used.</param>
    public static StationWindow Of(Site site, WeatherSource source, DaySpan day, IReadOnlyList<Reading> all, DateTimeOffset asOf)
    {
        var (kept, notes, wet) = (new List<Reading>(), new CheckNotes(site, source, day), 0);
        var solar = new SolarDay(notes);
        var end = day.End + After;
        for (var i = FirstFrom(all, day.Begin - Before); i < all.Count && all[i].Begin < end; i++)
        {
            // Files of different intervals may tell of the same time: no minute counts twice, the reading that began first keeps it.
            var overlaps = kept.Count > 0 && all[i].Begin < kept[^1].End;
            if (overlaps || all[i].End > asOf || all[i].End > end)
            {
                continue;
            }

            MarkWords.Note(all[i], notes);
            kept.Add(ValueChecks.Keep(all[i], notes));
            if (day.Holds(all[i].Begin))
            {
                solar.Add(all[i]);
                wet += IsWet(all[i].RelativeHumidityPercent) || IsWet(all[i].RelativeHumidityMaxPercent) ? 1 : 0;
            }
        }

        if (!source.IsDaily)
        {
            SeriesChecks.Run(new CheckedRows(kept, notes));
        }

        return new StationWindow(kept, notes, solar, [.. notes.SetAside.OrderBy(s => s.Begin)], wet);
    }

    /// <summary>The same without the day's temperatures.</summary>
    /// <param name="check">Which found them wrong.</param>
    /// <param name="why">In words.</param>
    public StationWindow WithoutTemperatures(WeatherCheck check, string why)
    {
        var rows = new List<Reading>(_readings);
        var notes = new CheckNotes(Site, Source, Day);
        notes.RainAside.AddRange(_notes.RainAside);
        new CheckedRows(rows, notes).SetAside(check, WeatherQuantity.AirTemperature, rows.FindIndex(r => Day.Holds(r.Begin)), rows.FindLastIndex(r => Day.Holds(r.Begin)) + 1, "°C", why);
        return new StationWindow(rows, notes, Solar, [.. SetAside, .. notes.SetAside], WetHumidities);
    }

    /// <summary>Known and interpolated values of a quantity; solar radiation in MJ/m² per hour, sunshine in h per hour, reference ET in mm per hour.</summary>
    public IReadOnlyList<Sample> Series(WeatherQuantity quantity)
    {
        if (!_series.TryGetValue(quantity, out var samples))
        {
            samples = ShortGaps.Fill([.. Known(quantity)], Source.Interval);
            _series.Add(quantity, samples);
        }

        return samples;
    }

    /// <summary>How much of the day was interpolated.</summary>
    public TimeSpan Interpolated(WeatherQuantity quantity) =>
        new(Series(quantity).Where(s => s.Interpolated && Day.Holds(s.Begin)).Sum(s => s.Length.Ticks));

    private static bool IsWet(double humidityPercent) => humidityPercent is > 100 and <= HumidityCheck.MostPercent;

    private static int FirstFrom(IReadOnlyList<Reading> all, DateTimeOffset begin)
    {
        var (low, high) = (0, all.Count);
        while (low < high)
        {
            var middle = low + ((high - low) / 2);
            if (all[middle].Begin < begin)
            {
                low = middle + 1;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }

    private IEnumerable<Sample> Known(WeatherQuantity quantity)
    {
        foreach (var reading in _readings)
        {
            var value = SeriesValue.Of(reading, quantity);
            if (!double.IsNaN(value))
            {
                yield return new Sample(reading.Begin, reading.End, value, Interpolated: false);
            }
        }
    }
}
