using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Plan;

/// <summary>Whether the pump can give in one window what a mean day of the peak months takes, however well the programs are laid.</summary>
/// <param name="NeedL">Gross water of a day, of all programs, L.</param>
/// <param name="GroundM2">That it falls on.</param>
/// <param name="WindowMinutes">Length of the watering window.</param>
/// <param name="CapacityLPerMin">The pump's; null = no pump limits the night.</param>
public sealed record NightSupply(double NeedL, double GroundM2, double WindowMinutes, double? CapacityLPerMin)
{
    private const double Tolerance = 1e-9;

    public double NeedMm => NeedL / GroundM2;

    /// <summary>What the pump gives in a whole window, as a depth on the ground, mm; null = no limit.</summary>
    public double? GivesMm => CapacityLPerMin * WindowMinutes / GroundM2;

    /// <summary>Capacity that would do: volume / time. Source: Golf Course Industry 2016: gpm = gallons / (hours × 60).</summary>
    public double CapacityNeededLPerMin => NeedL / WindowMinutes;

    /// <summary>How long the pump would have to run; null = no limit.</summary>
    public double? HoursNeeded => NeedL / CapacityLPerMin / 60;

    public bool Suffices => GivesMm is not { } gives || NeedMm <= gives + Tolerance;

    /// <summary>Of a plan; water days are shared evenly among the nights.</summary>
    /// <returns>Null where a station has neither flow nor ground.</returns>
    public static NightSupply? Of(Site site, PlanResult plan)
    {
        var (need, minutes) = (0.0, (plan.Window.Closes - plan.Window.Opens).TotalMinutes);
        var ground = new Dictionary<StationKey, double>();
        foreach (var program in plan.Programs)
        {
            foreach (var planned in program.Stations)
            {
                var station = planned.Station;
                if ((station.FlowLPerMin ?? station.Rate.MmPerHour * station.GroundM2 / 60) is not { } flow)
                {
                    return null;
                }

                ground[station.Key] = station.GroundM2 ?? flow * 60 / station.Rate.MmPerHour;
                need += flow * planned.ExactMinutes * program.StartsNeeded * PeakNeed.ShareOfDays(program.Program.Days, planned.Month);
            }
        }

        return ground.Count == 0 ? null : new(need, site.Stations.Where(s => ground.ContainsKey(s.Key)).Sum(s => ground[s.Key]), minutes == 0 ? 24 * 60 : minutes, site.PumpCapacityLPerMin);
    }
}
