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

    private StationWindow(Site site, WeatherSource source, DaySpan day, List<Reading> readings, IReadOnlyList<SetAsideValue> setAside, int wetHumidities)
    {
        Site = site;
        Source = source;
        Day = day;
        _readings = readings;
        SetAside = setAside;
        WetHumidities = wetHumidities;
        OfDay = [.. readings.Where(r => day.Holds(r.Begin))];
    }

    public Site Site { get; }

    public WeatherSource Source { get; }

    public DaySpan Day { get; }

    /// <summary>Cleaned readings that begin in the day.</summary>
    public IReadOnlyList<Reading> OfDay { get; }

    /// <summary>Values of the day that were set aside.</summary>
    public IReadOnlyList<SetAsideValue> SetAside { get; }

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
        var end = day.End + After;
        for (var i = FirstFrom(all, day.Begin - Before); i < all.Count && all[i].Begin < end; i++)
        {
            // Files of different intervals may tell of the same time: no minute counts twice, the reading that began first keeps it.
            var overlaps = kept.Count > 0 && all[i].Begin < kept[^1].End;
            if (overlaps || all[i].End > asOf || all[i].End > end)
            {
                continue;
            }

            var reading = ValueChecks.Keep(all[i], notes);
            kept.Add(reading);
            wet += day.Holds(reading.Begin) && (IsWet(all[i].RelativeHumidityPercent) || IsWet(all[i].RelativeHumidityMaxPercent)) ? 1 : 0;
        }

        return new StationWindow(site, source, day, kept, [.. notes.SetAside.OrderBy(s => s.Begin)], wet);
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
            var value = Value(reading, quantity);
            if (!double.IsNaN(value))
            {
                yield return new Sample(reading.Begin, reading.End, value, Interpolated: false);
            }
        }
    }

    private static double Value(Reading r, WeatherQuantity quantity) => quantity switch
    {
        WeatherQuantity.AirTemperature => double.IsNaN(r.AirTemperatureC) ? (r.AirTemperatureMaxC + r.AirTemperatureMinC) / 2 : r.AirTemperatureC,
        WeatherQuantity.RelativeHumidity => double.IsNaN(r.RelativeHumidityPercent)
            ? (r.RelativeHumidityMaxPercent + r.RelativeHumidityMinPercent) / 2
            : r.RelativeHumidityPercent,
        WeatherQuantity.DewPoint => r.DewPointC,
        WeatherQuantity.WindSpeed => r.WindSpeedMPerS,
        WeatherQuantity.SolarRadiation => r.SolarRadiationMJPerM2 / (r.End - r.Begin).TotalHours,
        WeatherQuantity.Sunshine => r.SunshineH / (r.End - r.Begin).TotalHours,
        WeatherQuantity.ReferenceEt => r.ReferenceEtMm / (r.End - r.Begin).TotalHours,
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "No series is made of it."),
    };
}
