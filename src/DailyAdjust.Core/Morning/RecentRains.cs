using DailyAdjust.Core.Advice;

namespace DailyAdjust.Core.Morning;

/// <summary>Rain of the last days by gauge, as far as it is worth naming in a reason.</summary>
internal static class RecentRains
{
    private const int DaysBack = 4;
    private const double WorthNamingMm = 2;

    public static IReadOnlyList<RecentRain> Of(MorningInputs inputs)
    {
        var recent = new List<RecentRain>();
        foreach (var today in inputs.RainSinceMidnight)
        {
            var days = inputs.Weather
                .Where(w => w.Date >= inputs.Date.AddDays(-DaysBack))
                .Select(w => (w.Date, Mm: w.Rain.FirstOrDefault(r => string.Equals(r.Gauge, today.Gauge, StringComparison.Ordinal))?.RainMm ?? 0))
                .Append((inputs.Date, Mm: today.Falls.Sum(f => f.Mm)))
                .Where(d => d.Mm > 0)
                .ToList();
            var sum = days.Sum(d => d.Mm);
            if (sum >= WorthNamingMm)
            {
                recent.Add(new RecentRain(today.Gauge, days[0].Date, sum));
            }
        }

        return recent;
    }
}
