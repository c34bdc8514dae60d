using DailyAdjust.Core.Morning;

namespace DailyAdjust.Tests.Reports;

/// <summary>A fortnight of the invented course's ground.</summary>
internal static class InventedAreas
{
    public static IEnumerable<AreaMoisture> Build(DateOnly today)
    {
        yield return Area("greens", 6.2, 12.4, 4.1, true, 2.1);
        yield return Area("tees", 6.2, 12.4, 3.7, true, 1.4);
        yield return Area("fairways", 15.0, 33.4, 3.9, true, 5.0);
        yield return Area("range", 25.0, 41.8, 3.2, false, 1.0);

        AreaMoisture Area(string name, double allowable, double total, double use, bool watered, double begin)
        {
            var days = new List<AreaDay>();
            var missing = begin;
            for (var i = -14; i <= 0; i++)
            {
                double? rain = i switch { -9 => null, -1 => 13.716, 0 => 2.54, _ => 0 };
                var drawn = Math.Min(missing + (i == 0 ? 0.2 : use + (0.3 * Math.Sin(i))), total);
                var irrigation = watered && drawn > allowable * 0.8 ? drawn - (allowable * 0.3) : 0;
                var after = drawn - (rain ?? 0) - irrigation;
                days.Add(new AreaDay(today.AddDays(i), Math.Max(after, 0), rain, irrigation, Math.Max(-after, 0)));
                missing = Math.Max(after, 0);
            }

            return new AreaMoisture(name, allowable, total, days);
        }
    }
}
