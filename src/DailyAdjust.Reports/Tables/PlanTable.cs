using DailyAdjust.Core.Plan;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Tables;

/// <summary>Base minutes for the peak month under the columns that <c>plan</c> prints; depths in mm; times on the site's clock.</summary>
public static class PlanTable
{
    public static IReadOnlyList<string> Columns { get; } =
    [
        "controller", "program", "station", "name", "area", "peak_month", "need_mm", "present_minutes", "exact_minutes", "minutes", "starts_needed", "present_starts", "starts",
        "percent_that_fits", "longest_cycle_min", "soak_min", "short_mm", "short_min",
    ];

    /// <summary>need_mm is net, of one water day; minutes are those of one start at 100 %; starts is empty where nothing fits.</summary>
    public static Table Of(PlanResult plan) => new(Columns, [.. plan.Programs.SelectMany(p => p.Stations.Select(s => Row(p, s)))]);

    /// <summary>What a person keys in.</summary>
    public static Table Summary(PlanResult plan)
    {
        string[] shown = ["controller", "program", "station", "name", "area", "present_minutes", "minutes", "present_starts", "starts"];
        var all = Columns.ToList();
        int[] places = [.. shown.Select(name => all.IndexOf(name))];
        return new(shown, [.. Of(plan).Rows.Select(IReadOnlyList<Cell> (row) => [.. places.Select(place => row[place])])]);
    }

    private static IReadOnlyList<Cell> Row(ProgramPlan program, StationPlan planned)
    {
        var (depth, minutes) = program.Short(planned);
        return
        [
            Cell.Text(program.Key.Controller),
            Cell.Text(program.Key.Program),
            Cell.Text(planned.Station.Key.Station),
            Cell.Text(planned.Station.Name),
            Cell.Text(planned.Station.Area.Name),
            Cell.Fixed(planned.Month, 0),
            Cell.Fixed(planned.NeedMm, 4),
            Cell.Short(planned.PresentMinutes),
            Cell.Fixed(planned.ExactMinutes, 4),
            Cell.Short(planned.Minutes),
            Cell.Fixed(program.StartsNeeded, 0),
            Cell.Text(Times(program.Program.Starts)),
            Cell.Text(Times(program.Starts)),
            Cell.Short(program.PercentThatFits),
            Cell.Fixed(planned.LongestMinutes, 2),
            Cell.Fixed(planned.SoakMinutes, 2),
            Cell.Fixed(depth, 4),
            Cell.Fixed(minutes, 2),
        ];
    }

    private static string Times(IEnumerable<TimeOnly> times) => string.Join(';', times.Select(SiteWords.Clock));
}
