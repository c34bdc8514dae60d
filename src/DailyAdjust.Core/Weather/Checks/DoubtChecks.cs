using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>The checks that doubt a sensor over weeks without finding any single value wrong.</summary>
internal static class DoubtChecks
{
    public static IReadOnlyList<SensorDoubt> Of(Site site, DateOnly date, IReadOnlyList<StationHistory> histories)
    {
        List<SensorDoubt> doubts = [];
        for (var i = 0; i < histories.Count; i++)
        {
            var (source, history) = (site.Weather.Stations[i], histories[i]);
            void Add(WeatherCheck check, string? words)
            {
                if (words is not null && !source.Accepts(check, check.Quantities[0]))
                {
                    doubts.Add(new(check.Name, source.Id, words));
                }
            }

            Add(DawnHumidityCheck.About, DawnHumidityCheck.WordsOf(history));
            Add(LowRadiationCheck.About, LowRadiationCheck.WordsOf(history));
            Add(HighRadiationCheck.About, HighRadiationCheck.WordsOf(history));
            Add(ClockCheck.About, ClockCheck.WordsOf(history, site, source, date));
        }

        return doubts;
    }
}
