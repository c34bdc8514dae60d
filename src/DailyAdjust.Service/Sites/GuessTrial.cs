using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Formats;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Service.Sites;

/// <summary>One date of a file as a proposal reads it.</summary>
/// <param name="Readings">Of that date, ascending.</param>
/// <param name="Day">Its rain and reference ET.</param>
public sealed record TrialDay(DateOnly Date, IReadOnlyList<Reading> Readings, WeatherDay Day);

/// <summary>Reads a file with a proposed source, and keeps its first days.</summary>
/// <param name="Report">Of the whole file.</param>
/// <param name="Days">The first dates.</param>
public sealed record GuessTrial(ReadingsReport Report, IReadOnlyList<TrialDay> Days)
{
    private const int DaysShown = 3;

    /// <summary>A day looks at the hours after its end.</summary>
    private const int DaysKept = DaysShown + 2;

    /// <param name="place">A site whose place and clock count; its own weather does not.</param>
    public static GuessTrial Of(string file, byte[] bytes, WeatherSource source, Site place)
    {
        var kept = new SortedDictionary<DateOnly, IReadOnlyList<Reading>>();
        using var stream = new MemoryStream(bytes);
        var report = WeatherFileReader.Read(file, stream, source, place.Clock, day =>
        {
            kept[day.Date] = kept.TryGetValue(day.Date, out var earlier) ? ReadingMerge.Merge([earlier, day.Readings]) : day.Readings;
            if (kept.Count > DaysKept)
            {
                kept.Remove(kept.Keys.Last());
            }
        });
        if (report.FileRefused || kept.Count == 0)
        {
            return new(report, []);
        }

        var dates = kept.Keys.Take(DaysShown).ToList();
        var site = place with { Weather = new WeatherSetup { Stations = [source], Gauges = [new Gauge(source.Id, source.Id)] } };
        var days = WeatherDays.Compute(new WeatherDayInputs
        {
            Versions = [new SiteVersion(dates[0], site)],
            From = dates[0],
            Through = dates[^1],
            Readings = new Dictionary<string, IReadOnlyList<Reading>>(StringComparer.Ordinal) { [source.Id] = [.. kept.Values.SelectMany(readings => readings)] },
            Log = [],
            AsOf = site.Clock.DayEnd(dates[^1].AddDays(1)),
        });
        return new(report, [.. dates.Select(date => new TrialDay(date, kept[date], days.First(day => day.Date == date)))]);
    }
}
