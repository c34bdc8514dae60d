using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Plan;

/// <summary>A program's percentage in one month of a mean year.</summary>
/// <param name="Month">1 to 12.</param>
/// <param name="NeedMm">What the turf draws in the month, mm.</param>
/// <param name="NoRain">For a month without rain.</param>
/// <param name="Rain">Effective rain of a mean such month; null = not known.</param>
/// <param name="AfterRain">With that rain taken off; null = not known.</param>
public sealed record MonthPercent(int Month, double NeedMm, SeasonNumber NoRain, MonthRain? Rain, SeasonNumber? AfterRain);

/// <summary>What a program runs at in one month.</summary>
/// <param name="Percent">On the dial; 0 = off: nothing is needed.</param>
/// <param name="ExactPercent">Month's need / peak month's need, percent.</param>
public sealed record SeasonNumber(double Percent, double ExactPercent);

/// <summary>One program through the year.</summary>
public sealed record ProgramSeason(ProgramKey Key, IReadOnlyList<MonthPercent> Months);

/// <summary>
/// Percentages through the year where base minutes are set for the peak month (= 100 %): month's need a day / peak month's need a day. Source: Colorado State
/// Univ. Extension, as the trade states it.
/// </summary>
public static class SeasonPercent
{
    /// <param name="site">One number per dial: programs of a controller with one percentage share it.</param>
    /// <param name="etoMmPerDay">12 monthly means, January first.</param>
    /// <param name="effectiveRain">12 mean months of effective rain, null where one is not known.</param>
    /// <exception cref="ArgumentException">Not 12 values.</exception>
    public static IReadOnlyList<ProgramSeason> Of(Site site, IReadOnlyList<double> etoMmPerDay, IReadOnlyList<MonthRain?> effectiveRain)
    {
        if (etoMmPerDay.Count != 12 || effectiveRain.Count != 12)
        {
            throw new ArgumentException("A year needs 12 monthly values.", nameof(etoMmPerDay));
        }

        var seasons = new List<ProgramSeason>();
        foreach (var program in ZonePlan.AllPrograms(site))
        {
            var shared = program.Controller.Applies == PercentApplies.Controller;
            var stations = site.Stations
                .Where(s => string.Equals(s.Key.Controller, program.Key.Controller, StringComparison.Ordinal) && (shared || s.BaseMinutes.ContainsKey(program.Key.Program)))
                .ToList();
            if (stations.Exists(s => s.BaseMinutes.ContainsKey(program.Key.Program)))
            {
                seasons.Add(new(program.Key, Months(program.Controller, stations, etoMmPerDay, effectiveRain)));
            }
        }

        return seasons;
    }

    private static List<MonthPercent> Months(Controller controller, List<Station> stations, IReadOnlyList<double> eto, IReadOnlyList<MonthRain?> rain)
    {
        var weight = GroundWeight.Of(stations);
        var weights = stations.Sum(weight);
        double Draws(int month) => stations.Sum(s => weight(s) * PeakNeed.MmPerDay(s, eto, month)) / weights;
        var peak = Enumerable.Range(1, 12).Max(Draws);
        SeasonNumber Number(int month, double needMm)
        {
            var exact = peak <= 0 ? 0 : needMm / PeakNeed.DaysIn(month) / peak * 100;
            return new(exact > 0 ? DialNumber.Nearest(controller, exact) : 0, exact);
        }

        return
        [
            .. Enumerable.Range(1, 12).Select(month =>
            {
                var need = Draws(month) * PeakNeed.DaysIn(month);
                var off = rain[month - 1];
                return new MonthPercent(month, need, Number(month, need), off, off is null ? null : Number(month, Math.Max(0, need - off.Mm)));
            }),
        ];
    }
}
