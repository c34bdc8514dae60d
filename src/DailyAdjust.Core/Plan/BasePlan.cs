using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Plan;

/// <summary>One program, present and proposed.</summary>
/// <param name="Program">As it is now.</param>
/// <param name="Starts">Proposed, ascending; empty = nothing of it fits.</param>
/// <param name="StartsNeeded">How many starts a water day needs.</param>
/// <param name="PercentThatFits">Of the proposed minutes, percent: 100 = all of them; 0 = nothing.</param>
/// <param name="Stations">In the controller's order; their minutes are those at 100 %.</param>
/// <param name="RunMinutes">From a start to the end of its last station, at the percentage that fits.</param>
/// <param name="PresentRunMinutes">The same of the present minutes.</param>
public sealed record ProgramPlan(
    ProgramKey Key,
    WateringProgram Program,
    IReadOnlyList<TimeOnly> Starts,
    int StartsNeeded,
    double PercentThatFits,
    IReadOnlyList<StationPlan> Stations,
    double RunMinutes,
    double PresentRunMinutes)
{
    /// <summary>What a station lacks of a water day, net mm and minutes, where not all of it fits.</summary>
    public (double DepthMm, double Minutes) Short(StationPlan station) =>
        (station.NeedMm * (1 - (PercentThatFits / 100)), station.Minutes * StartsNeeded * (1 - (PercentThatFits / 100)));
}

/// <summary>Base programs for the peak month, and the window they were laid into.</summary>
/// <param name="WindowAssumed">The site has none.</param>
public sealed record PlanResult(WateringWindow Window, bool WindowAssumed, IReadOnlyList<ProgramPlan> Programs);

/// <summary>Base minutes for the peak month, with starts that fit the window, every box and the pump.</summary>
public static class BasePlan
{
    private const int AllOf = 100;
    private const int StepPercent = 5;

    /// <summary>Nine hours, where the site has no window. Common practice.</summary>
    public static WateringWindow UsualNight { get; } = new(new(21, 0), new(6, 0));

    /// <summary>
    /// Programs are laid in the site's order of priority, then in walking order: what comes last finds least room and is cut first. A program that keeps its
    /// present starts where they fit.
    /// </summary>
    /// <param name="site">Programs, stations, window, pump.</param>
    /// <param name="etoMmPerDay">12 monthly means, January first.</param>
    /// <exception cref="ArgumentException">Not 12 values, or none above 0.</exception>
    public static PlanResult Of(Site site, IReadOnlyList<double> etoMmPerDay)
    {
        if (etoMmPerDay.Count != 12 || etoMmPerDay.Max() <= 0)
        {
            throw new ArgumentException("Normals are 12 monthly values, some above 0.", nameof(etoMmPerDay));
        }

        var programs = ZonePlan.AllPrograms(site);
        var zones = ZonePlan.Of(site, programs);
        var window = site.Window ?? UsualNight;
        var nights = new PlanNights(site, window, programs);
        var laying = new StartLaying(site, nights);
        var laid = programs
            .Select(p => BaseProgram.Of(p, zones, etoMmPerDay))
            .OfType<BaseProgram>()
            .OrderBy(p => site.PriorityOf(p.Stations.Select(s => s.Station.Area.Name))).ThenBy(p => p.Program.Controller.Route)
            .ToList()
            .ConvertAll(p => Lay(laying, p))
            .ToDictionary(p => p.Key);
        return new(window, site.Window is null, [.. programs.Where(p => laid.ContainsKey(p.Key)).Select(p => laid[p.Key])]);
    }

    private static ProgramPlan Lay(StartLaying laying, BaseProgram program)
    {
        var controller = program.Program.Controller;
        StartBlock Block(double percent) => StartBlock.Of(controller, program.Stations.Select(s => (s.Station, RunMinutes.At(controller, s.Minutes, percent))));
        var present = StartBlock.Of(controller, program.Stations.Select(s => (s.Station, s.PresentMinutes))).Minutes;
        for (var percent = AllOf; percent > 0; percent -= StepPercent)
        {
            var block = Block(percent);
            if (block.Minutes > 0 && laying.Lay(program, block) is { } starts)
            {
                return new(program.Program.Key, program.Program.Program, starts, program.Starts, percent, program.Stations, block.Minutes, present);
            }
        }

        return new(program.Program.Key, program.Program.Program, [], program.Starts, 0, program.Stations, 0, present);
    }
}
