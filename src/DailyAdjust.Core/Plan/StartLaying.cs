using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Plan;

/// <summary>Looks for the starts of one program in what is left of the nights.</summary>
internal sealed class StartLaying(Site site, PlanNights nights)
{
    /// <summary>Starts are set on these minutes: nobody keys in 22:07 by choice.</summary>
    private const int StepMinutes = 5;

    private const double Tolerance = 1e-9;

    /// <summary>Lays as many starts as asked, present ones if they fit; the earliest ones otherwise.</summary>
    /// <returns>Ascending by time of day; null where they do not fit, and then nothing was laid.</returns>
    public IReadOnlyList<TimeOnly>? Lay(BaseProgram program, StartBlock block)
    {
        var apart = Math.Max(block.Minutes, program.Stations.Where(_ => program.Starts > 1).Select(s => s.SoakMinutes + s.Minutes).DefaultIfEmpty().Max());
        var areas = program.Stations.Select(s => s.Station.Area).Distinct().ToList();
        var minutes = Present(program, block, apart, areas) ?? Earliest(program, block, apart, areas);
        foreach (var minute in minutes ?? [])
        {
            nights.Lay(program.Program, block, minute);
        }

        return minutes is null ? null : [.. minutes.Select(nights.TimeAt).Order()];
    }

    private List<int>? Present(BaseProgram program, StartBlock block, double apart, List<Area> areas)
    {
        var minutes = program.Program.Program.Starts.Select(nights.MinuteOf).OfType<int>().Order().ToList();
        return minutes.Count == program.Starts
            && minutes.Count == program.Program.Program.Starts.Count
            && minutes.Zip(minutes.Skip(1), (a, b) => b - a).All(gap => gap >= apart - Tolerance)
            && minutes.TrueForAll(m => May(program, block, m, areas))
            ? minutes
            : null;
    }

    private List<int>? Earliest(BaseProgram program, StartBlock block, double apart, List<Area> areas)
    {
        for (var first = 0; first < nights.Length; first += StepMinutes)
        {
            var minutes = new List<int>();
            for (var m = first; m < nights.Length && minutes.Count < program.Starts; m += StepMinutes)
            {
                var far = minutes.Count == 0 || m - minutes[^1] >= apart - Tolerance;
                var sameNight = minutes.Count == 0 || program.Program.Program.Days is WaterDays.EveryDay || nights.AfterMidnight(m) == nights.AfterMidnight(first);
                if (far && sameNight && May(program, block, m, areas))
                {
                    minutes.Add(m);
                }
                else if (minutes.Count == 0)
                {
                    break;
                }
            }

            if (minutes.Count == program.Starts)
            {
                return minutes;
            }
        }

        return null;
    }

    private bool May(BaseProgram program, StartBlock block, int minute, List<Area> areas)
    {
        var time = nights.TimeAt(minute);
        return !site.Restrictions.Any(r => r.HoursNotAllowed is { } hours && hours.Contains(time) && areas.Exists(r.Covers)) && nights.Fits(program.Program, block, minute);
    }
}
