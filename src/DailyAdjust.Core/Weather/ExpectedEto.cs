using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>What reference ET to expect of a day that has not been measured.</summary>
public static class ExpectedEto
{
    private const int KnownDays = 7;

    /// <summary>mm/day; null where nothing is known.</summary>
    public static double? For(DateOnly day, DateOnly sheetDate, IReadOnlyList<WeatherDay> known, MonthlyNormals? normals)
    {
        var last = known.Where(w => w.Basis is not (EtoBasis.Expected or EtoBasis.Open) && w.EtoMm is not null && w.Date < sheetDate).TakeLast(KnownDays).ToList();
        var normal = normals?.EtoMmPerDay[day.Month - 1];
        if (last.Count == 0)
        {
            return normal;
        }

        var mean = last.Average(w => w.EtoMm!.Value);
        return day > sheetDate && normal > mean ? normal : mean;
    }
}
