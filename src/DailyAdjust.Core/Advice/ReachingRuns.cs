using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Runs that begin before an order, or before the hours of a watering rule, and are still on in it: a start alone does not tell that.</summary>
internal static class ReachingRuns
{
    /// <summary>By run, then by what begins first.</summary>
    public static IEnumerable<ReachingRun> Of(AdviceContext context, IReadOnlyList<PlannedRun> runs) =>
        context.Off.IsEmpty && context.Rules.Count == 0 ? [] : runs.SelectMany(r => Spans(context, r).OrderBy(s => s.From).Select(s => Caught(r, s)).OfType<ReachingRun>());

    private static ReachingRun? Caught(PlannedRun run, Span span)
    {
        List<StationRun> stations = [.. run.Stations];
        List<StationRun> caught = [.. stations.Where(span.Catches)];
        if (caught.Count == 0)
        {
            return null;
        }

        var ends = caught.Max(s => s.Ends);
        var isOverFirst = span.Ends < ends;
        return new ReachingRun(
            run.Program.Key,
            run.Start,
            stations.TrueForAll(s => span.Stops(s.Station)) ? [] : [.. caught.Select(s => s.Station.Key)],
            span.From,
            isOverFirst ? span.Ends!.Value : ends,
            isOverFirst || run.Begins != run.Start.At ? null : ends - span.From,
            span.Why);
    }

    /// <summary>What begins to forbid water while the run is on.</summary>
    private static IEnumerable<Span> Spans(AdviceContext context, PlannedRun run)
    {
        foreach (var order in context.Off.NotOver(run.Start.At).Where(o => o.From > run.Start.At && o.From < run.Finishes))
        {
            yield return new Span(order.From, order.Ends, OrderWords.Of(order), station => Prohibitions.Stops(order, run.Program, station));
        }

        var clock = context.Site.Clock;
        foreach (var rule in Prohibitions.RulesFor(context, run.Program).Where(r => r.HoursNotAllowed is not null && !Prohibitions.ForbidsTime(context.Site, r, run.Start)))
        {
            for (var date = clock.DateOf(run.Start.At); date <= clock.DateOf(run.Finishes); date = date.AddDays(1))
            {
                var from = clock.ToInstant(date, rule.HoursNotAllowed!.Opens);
                if (rule.HoldsOn(date) && from > run.Start.At && from < run.Finishes)
                {
                    yield return new Span(from, clock.ToInstant(rule.HoursNotAllowed.Closes > rule.HoursNotAllowed.Opens ? date : date.AddDays(1), rule.HoursNotAllowed.Closes), Prohibitions.Named(rule), station => rule.Covers(station.Area));
                }
            }
        }
    }

    private sealed record Span(DateTimeOffset From, DateTimeOffset? Ends, Phrase Why, Func<Station, bool> Stops)
    {
        public bool Catches(StationRun run) => run.Ends > From && (Ends is null || run.Begins < Ends) && Stops(run.Station);
    }
}
