using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Plan;

/// <summary>One station's minutes in one program, present and proposed.</summary>
/// <param name="Month">The month in which it draws most, 1 to 12.</param>
/// <param name="NeedMm">Net depth that one water day of the program has to bring, mm.</param>
/// <param name="PresentMinutes">Of one start.</param>
/// <param name="ExactMinutes">Of one start, that bring exactly the need.</param>
/// <param name="Minutes">The same as the controller takes it.</param>
/// <param name="LongestMinutes">Longest cycle without runoff, where a water day would be longer; null = no split is needed.</param>
/// <param name="SoakMinutes">From the end of one cycle to the beginning of the next; 0 = none.</param>
public sealed record StationPlan(
    Station Station, int Month, double NeedMm, double PresentMinutes, double ExactMinutes, double Minutes, double? LongestMinutes, double SoakMinutes);

/// <summary>One program with base minutes for the peak month, before its starts are laid.</summary>
/// <param name="Starts">How many starts a water day needs.</param>
internal sealed record BaseProgram(PlannedProgram Program, int Starts, IReadOnlyList<StationPlan> Stations)
{
    /// <summary>
    /// Minutes of a water day = 60 × need / (rate × efficiency), need = ETo × Kc × exposure of the peak month / share of days with water. Where the rate exceeds
    /// the intake rate and a start would be longer than the longest cycle without runoff, the day's minutes are split into as many starts as it takes.
    /// A station in several programs gets its need from each in proportion to what each gives at present. Source: common practice (landscape irrigation handbooks).
    /// </summary>
    /// <returns>Null where the program has no station.</returns>
    public static BaseProgram? Of(PlannedProgram program, IReadOnlyList<ZonePlan> zones, IReadOnlyList<double> etoMmPerDay)
    {
        var drafts = zones.Where(z => z.Programs.Exists(p => p.Program.Key == program.Key)).Select(z => Draft.Of(program, z, etoMmPerDay)).ToList();
        if (drafts.Count == 0)
        {
            return null;
        }

        var starts = Math.Max(program.Program.Starts.Count, drafts.Max(d => d.Split?.Cycles ?? 1));
        return new(program, starts, [.. drafts.Select(d => new StationPlan(
            d.Station,
            d.Month,
            d.NeedMm,
            d.PresentMinutes,
            d.DayMinutes / starts,
            RunMinutes.At(program.Controller, d.DayMinutes / starts, 100),
            d.Split is null ? null : d.LongestMinutes,
            d.Split?.SoakMinutes ?? 0))]);
    }

    /// <param name="DayMinutes">Of a whole water day.</param>
    /// <param name="Split">Null where they may run in one piece.</param>
    private sealed record Draft(Station Station, int Month, double NeedMm, double PresentMinutes, double DayMinutes, CycleAndSoak? Split)
    {
        public double LongestMinutes => NetIrrigation.LongestCycleMinutes(Station.Rate.MmPerHour, Station.Area.Soil.IntakeRate!.Value.MmPerHour, Station.Area.Soil.SurfaceStorage.Mm);

        public static Draft Of(PlannedProgram program, ZonePlan zone, IReadOnlyList<double> eto)
        {
            var station = zone.Station;
            var month = PeakNeed.Month(station, eto);
            double Gives((PlannedProgram Program, double Minutes) p) => p.Minutes * p.Program.Program.Starts.Count * PeakNeed.ShareOfDays(p.Program.Program.Days, month);
            var present = zone.Programs.First(p => p.Program.Key == program.Key);
            var part = Gives(present) / zone.Programs.Sum(Gives);
            var need = part * PeakNeed.MmPerDay(station, eto, month) / PeakNeed.ShareOfDays(program.Program.Days, month);
            var minutes = 60 * need / (station.Rate.MmPerHour * station.Efficiency);
            return new(station, month, need, present.BaseMinutes, minutes, CycleAndSoak.Of(station, minutes));
        }
    }
}
