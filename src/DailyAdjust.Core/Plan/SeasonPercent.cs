using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Plan;

/// <summary>A program's percentage in one month of a mean year.</summary>
/// <param name="Month">1 to 12.</param>
/// <param name="Percent">On the dial; 0 = off: nothing is needed.</param>
/// <param name="ExactPercent">Month's need / peak month's need, percent.</param>
/// <param name="NeedMm">What the turf draws in the month, mm, before rain is taken off.</param>
/// <param name="RainMm">Effective rain that was taken off, mm; null = none was.</param>
public sealed record MonthPercent(int Month, double Percent, double ExactPercent, double NeedMm, double? RainMm);

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
    /// <param name="effectiveRainMm">12 monthly totals of effective rain, null where a month is not known; null = no rain is taken off.</param>
    /// <exception cref="ArgumentException">Not 12 values.</exception>
    public static IReadOnlyList<ProgramSeason> Of(Site site, IReadOnlyList<double> etoMmPerDay, IReadOnlyList<double?>? effectiveRainMm)
    {
        if (etoMmPerDay.Count != 12 || effectiveRainMm is { Count: not 12 })
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
                seasons.Add(new(program.Key, Months(program.Controller, stations, etoMmPerDay, effectiveRainMm)));
            }
        }

        return seasons;
    }

    private static List<MonthPercent> Months(Controller controller, List<Station> stations, IReadOnlyList<double> eto, IReadOnlyList<double?>? rain)
    {
        // By ground; by station where the ground of one is unknown, as everywhere.
        var byGround = stations.TrueForAll(s => s.GroundM2 is not null);
        var weights = stations.Sum(s => byGround ? s.GroundM2!.Value : 1);
        double Draws(int month) => stations.Sum(s => (byGround ? s.GroundM2!.Value : 1) * PeakNeed.MmPerDay(s, eto, month)) / weights;
        var peak = Enumerable.Range(1, 12).Max(Draws);
        var months = new List<MonthPercent>();
        foreach (var month in Enumerable.Range(1, 12))
        {
            var need = Draws(month) * PeakNeed.DaysIn(month);
            var off = rain?[month - 1];
            var exact = peak <= 0 ? 0 : Math.Max(0, need - (off ?? 0)) / PeakNeed.DaysIn(month) / peak * 100;
            months.Add(new(month, exact > 0 ? DialNumber.Nearest(controller, exact) : 0, exact, need, off));
        }

        return months;
    }
}
