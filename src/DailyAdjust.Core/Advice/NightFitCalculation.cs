using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Checks that the changed programs fit the nights to come: overlaps, the watering window, the pump.</summary>
internal static class NightFitCalculation
{
    private const int MostNights = 7;

    /// <param name="context">The morning.</param>
    /// <param name="advice">What was advised.</param>
    /// <param name="log">Its `pump` entries reduce the capacity from their time until their end.</param>
    public static NightFit Of(AdviceContext context, IReadOnlyList<ProgramAdvice> advice, IReadOnlyList<LogEntry> log)
    {
        var percents = advice.ToDictionary(a => a.Key, PercentAfter);
        var visits = context.Programs.Select(p => context.Visits.NextAfter(p, context.Date));
        var nights = Math.Min(MostNights, visits.DefaultIfEmpty(context.Date.AddDays(1)).Max().DayNumber - context.Date.DayNumber);
        var to = context.Site.Clock.ToInstant(context.Date.AddDays(nights), context.Site.Report.RoundDoneBy);
        var runs = NightRuns.Of(context.Site, context.Programs, context.RoundDone, to, key => percents[key]);
        return new NightFit(
            [.. runs.Select(r => new ProgramRun(r.Start.Date, r.Program.Key, r.Begins, r.Finishes))],
            [.. Overlaps(context.Site, runs)],
            [.. OutsideWindow(context.Site, runs)],
            [.. PumpLoad.Exceeded(context.Site, runs, log)]);
    }

    /// <summary>What a program runs at once the advice is carried out; 0 = off.</summary>
    public static double PercentAfter(ProgramAdvice advice) => advice.Advice switch
    {
        AdviceKind.Set or AdviceKind.Resume => advice.Percent!.Value,
        AdviceKind.Leave or AdviceKind.AsSet => advice.Present.Percent,
        _ => 0,
    };

    private static IEnumerable<ProgramOverlapFound> Overlaps(Site site, IReadOnlyList<PlannedRun> runs)
    {
        for (var i = 0; i < runs.Count; i++)
        {
            for (var j = i + 1; j < runs.Count && ReferenceEquals(runs[i].Program.Controller, runs[j].Program.Controller); j++)
            {
                var (first, second) = (runs[i], runs[j]);
                var ends = first.Finishes < second.Finishes || first.Program.Controller.Overlap == ProgramOverlap.Stack ? first.Finishes : second.Finishes;
                var minutes = (ends - second.Start.At).TotalMinutes;
                if (minutes > 0)
                {
                    yield return new ProgramOverlapFound(
                        first.Program.Key.Controller, first.Program.Key.Program, second.Program.Key.Program, first.Start.Date, minutes, LargestThatEnds(site, first, second.Start.At));
                }
            }
        }
    }

    /// <summary>The largest number of the dial at which a run ends by an instant; 0 = none.</summary>
    private static double LargestThatEnds(Site site, PlannedRun run, DateTimeOffset by)
    {
        var controller = run.Program.Controller;
        for (var percent = Math.Min(run.Percent, DialNumber.AtMost(controller, run.Percent)); percent > 0 && percent >= controller.PercentMin; percent -= controller.PercentStep)
        {
            if (NightRuns.Finish(site, run.Program, run.Begins, percent) <= by)
            {
                return percent;
            }
        }

        return 0;
    }

    private static IEnumerable<OutsideWindow> OutsideWindow(Site site, IReadOnlyList<PlannedRun> runs)
    {
        if (site.Window is not { } window)
        {
            yield break;
        }

        foreach (var run in runs.Where(r => r.Finishes > r.Begins))
        {
            var begins = TimeOnly.FromDateTime(site.Clock.ToLocal(run.Begins).DateTime);
            var closes = NextClosing(site, window, run.Begins);
            if (!window.Contains(begins) || run.Finishes > closes)
            {
                yield return new OutsideWindow(run.Program.Key.Controller, run.Program.Key.Program, run.Start.Date, run.Finishes);
            }
        }
    }

    private static DateTimeOffset NextClosing(Site site, WateringWindow window, DateTimeOffset from)
    {
        var date = site.Clock.DateOf(from);
        var closes = site.Clock.ToInstant(date, window.Closes);
        return closes > from ? closes : site.Clock.ToInstant(date.AddDays(1), window.Closes);
    }
}
