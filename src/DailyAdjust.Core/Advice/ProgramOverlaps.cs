using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Programs of one controller that run into each other.</summary>
internal static class ProgramOverlaps
{
    /// <param name="laying">Lays runs out again at other percentages.</param>
    /// <param name="runs">By controller, then by start.</param>
    public static IEnumerable<ProgramOverlapFound> Of(NightRuns laying, IReadOnlyList<PlannedRun> runs) => Pairs(runs).Select(p => new ProgramOverlapFound(
        p.First.Program.Key.Controller, p.First.Program.Key.Program, p.Second.Program.Key.Program, p.First.Start.Date, p.Minutes, LargestThatEnds(laying, p.First, p.Second.Start.At)));

    /// <summary>Programs of one box that run at once; where it stacks they wait for one another, and none do.</summary>
    public static IEnumerable<ProgramKey> AtOnce(IReadOnlyList<PlannedRun> runs) => Pairs(runs)
        .Where(p => p.First.Program.Controller.Overlap != ProgramOverlap.Stack)
        .SelectMany(p => new[] { p.First.Program.Key, p.Second.Program.Key });

    /// <summary>Whether any run of one program is on while another of its box is, or one of its own.</summary>
    public static bool AnyAtOnce(IReadOnlyList<PlannedRun> own, IReadOnlyList<PlannedRun> box) =>
        own.Any(o => box.Any(r => !ReferenceEquals(r, o) && r.Begins < o.Finishes && r.Finishes > o.Begins));

    private static IEnumerable<(PlannedRun First, PlannedRun Second, double Minutes)> Pairs(IReadOnlyList<PlannedRun> runs)
    {
        for (var i = 0; i < runs.Count; i++)
        {
            for (var j = i + 1; j < runs.Count && ReferenceEquals(runs[i].Program.Controller, runs[j].Program.Controller); j++)
            {
                var (first, second) = (runs[i], runs[j]);
                if (second.Start.At >= first.Finishes)
                {
                    // Starts ascend: no later run begins before this one has ended.
                    break;
                }

                var ends = first.Finishes < second.Finishes || first.Program.Controller.Overlap == ProgramOverlap.Stack ? first.Finishes : second.Finishes;
                var minutes = (ends - second.Start.At).TotalMinutes;
                if (minutes > 0)
                {
                    yield return (first, second, minutes);
                }
            }
        }
    }

    /// <summary>The largest number of the dial at which a run ends by an instant; 0 = none.</summary>
    private static double LargestThatEnds(NightRuns laying, PlannedRun run, DateTimeOffset by)
    {
        var controller = run.Program.Controller;
        for (var percent = Math.Min(run.Percent, DialNumber.AtMost(controller, run.Percent)); percent > 0 && percent >= controller.PercentMin; percent -= controller.PercentStep)
        {
            if (run.Begins + laying.LengthOf(run.Due with { Percent = percent }) <= by)
            {
                return percent;
            }
        }

        return 0;
    }
}
