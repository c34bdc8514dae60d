using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>What somebody was to take out of a program at the last visit and what belongs in it again from today's on.</summary>
/// <param name="Program">Which.</param>
/// <param name="Stations">To put back, in the controller's order; empty = starts.</param>
/// <param name="Starts">To put back, on the box's clock, ascending; empty = stations.</param>
/// <param name="Why">What took them out: a plain clause.</param>
/// <param name="Until">When that ended; null = it names no end, and holds for no start before the next visit.</param>
public sealed record PutBack(ProgramKey Program, IReadOnlyList<StationKey> Stations, IReadOnlyList<TimeOnly> Starts, Phrase Why, LogTime? Until);

/// <summary>
/// Orders and rules over single stations or starts, after the fact. Whoever came on the last visit day was asked to take them out; what does not hold
/// for any start from today's visit on is put back today. Only the log and the visit days decide, so it is said at one visit.
/// </summary>
internal static class PutBackPart
{
    /// <summary>How far back a visit is looked for.</summary>
    private const int DaysBack = 62;

    public static IReadOnlyList<PutBack> Of(AdviceContext context) =>
        [.. context.Programs.OrderBy(p => p.Controller.Route).Where(p => context.Visits.IsVisit(p, context.Date)).SelectMany(p => OfProgram(context, p))];

    private static IEnumerable<PutBack> OfProgram(AdviceContext context, PlannedProgram program)
    {
        if (context.Off.IsEmpty && context.Rules.Count == 0)
        {
            yield break;
        }

        var now = Horizon.Of(context, program, context.Date, context.RoundDone);
        if (!MayRun(context, program, now) || (now.GrowIn is null ? LastVisit(context, program) : Yesterday(context, program, now)) is not { } before)
        {
            yield break;
        }

        var stillOut = OrderHits.Stations(context, program, now).SelectMany(o => o.Stations).ToHashSet();
        foreach (var out_ in OrderHits.Stations(context, program, before))
        {
            if (out_.Stations.Where(s => !stillOut.Contains(s)).ToList() is { Count: > 0 } stations)
            {
                yield return new PutBack(program.Key, stations, [], out_.Why, out_.Until);
            }
        }

        // A start that is not in the box any more is missing on every date.
        var runNow = now.Starts.Select(s => ClockOf(context, s.At)).Except(OrderHits.Starts(context, program, now).Select(s => ClockOf(context, s.At))).ToHashSet();
        foreach (var group in OrderHits.Starts(context, program, before).GroupBy(t => (t.Why, t.Until)))
        {
            if (group.Select(t => ClockOf(context, t.At)).Where(runNow.Contains).Distinct().Order().ToList() is { Count: > 0 } starts)
            {
                yield return new PutBack(program.Key, [], starts, group.Key.Why, group.Key.Until);
            }
        }
    }

    /// <summary>Visits of the last weeks from a date back, with what each decided about, the last first.</summary>
    internal static IEnumerable<(DateOnly Visit, Horizon Horizon)> VisitsBack(AdviceContext context, PlannedProgram program, DateOnly from)
    {
        var first = context.Date.AddDays(-DaysBack);
        return context.Visits.Back(program, from, first > context.Site.Start ? first : context.Site.Start).Select(date => (date, Horizon.Of(context, program, date)));
    }

    /// <summary>The last visit before today's that decided about starts of which some might run.</summary>
    private static Horizon? LastVisit(AdviceContext context, PlannedProgram program) => VisitsBack(context, program, context.Date.AddDays(-1))
        .Select(v => v.Horizon)
        .FirstOrDefault(h => h.GrowIn is null && MayRun(context, program, h));

    /// <summary>
    /// The starts of a grow-in that ran from yesterday's round on and go on unchanged. Where they are keyed in anew today, whatever was taken out is in
    /// with them; so it is when a grow-in ends.
    /// </summary>
    private static Horizon? Yesterday(AdviceContext context, PlannedProgram program, Horizon now)
    {
        var yesterday = context.Date.AddDays(-1);
        return now.GrowIn is { } growIn && GrowInPart.GoesOn(context, program, growIn, context.Date)
            && Horizon.Of(context, program, yesterday) is { } horizon && ReferenceEquals(horizon.GrowIn, growIn) && MayRun(context, program, horizon) ? horizon : null;
    }

    /// <summary>Where all of its starts are stopped, the dial is turned and nothing is taken out.</summary>
    internal static bool MayRun(AdviceContext context, PlannedProgram program, Horizon horizon) =>
        Prohibitions.SeasonOrOrder(context, program, horizon) is null && OrderHits.Starts(context, program, horizon).Count < horizon.Starts.Count;

    private static TimeOnly ClockOf(AdviceContext context, DateTimeOffset at) => TimeOnly.FromDateTime(context.Site.Clock.ToLocal(at).DateTime);
}
