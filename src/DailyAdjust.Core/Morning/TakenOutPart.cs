using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>A start of the last two days that was to be taken out, whole or for a station, and of which nobody said whether it ran.</summary>
/// <param name="Program">Which.</param>
/// <param name="Station">The balance takes it that it ran; null = the whole start.</param>
/// <param name="Date">The start's date.</param>
/// <param name="At">The start, UTC.</param>
/// <param name="Finishes">When all of the start was due to be done, UTC.</param>
public sealed record TakenOutRun(ProgramKey Program, StationKey? Station, DateOnly Date, DateTimeOffset At, DateTimeOffset Finishes)
{
    /// <summary>The program has other starts on that date: who answers names the hours.</summary>
    public bool IsOneOfSeveral { get; init; }
}

/// <summary>What was to be taken out of a program, after the fact.</summary>
internal static class TakenOutPart
{
    private static readonly TimeSpan Asked = TimeSpan.FromHours(48);

    /// <summary>Starts of the last two days that were to be taken out, or a station of them, while the program went on, and nobody said so.</summary>
    public static IReadOnlyList<TakenOutRun> Of(AdviceContext context, IReadOnlyList<LogEntry> log)
    {
        if (context.Off.IsEmpty && context.Rules.Count == 0)
        {
            return [];
        }

        var ran = new RanHistory(context.Site.Clock, log);
        var runs = OvernightPart.RunsSince(context, context.AsOf - Asked);
        return [.. runs.OrderBy(r => r.Program.Controller.Route).ThenBy(r => r.Start.At).SelectMany(run => OfRun(context, ran, run)
            .Select(t => t with { IsOneOfSeveral = OvernightPart.IsOneOfSeveral(context, run) }))];
    }

    private static IEnumerable<TakenOutRun> OfRun(AdviceContext context, RanHistory ran, PlannedRun run)
    {
        var (program, start) = (run.Program, run.Start);
        if (OrderHits.Starts(context, program, Single(start)).Count > 0)
        {
            // Where the visit that decided about it had no start left to run, the dial was turned: the round asks about that.
            var wasToRun = Decided(context, program, start) is { } horizon && PutBackPart.MayRun(context, program, horizon);
            return wasToRun && !ran.IsToldOf(program.Key, start.Date, start.At, run.Finishes) ? [new TakenOutRun(program.Key, null, start.Date, start.At, run.Finishes)] : [];
        }

        var stations = OrderHits.Stations(context, program, Single(start)).SelectMany(o => o.Stations).ToHashSet();
        return run.Stations
            .Where(s => stations.Contains(s.Station.Key) && ran.Share(program.Key, s.Station, start.Date, start.At, (s.Begins, s.Ends), untold: -1) < 0)
            .Select(s => new TakenOutRun(program.Key, s.Station.Key, start.Date, start.At, run.Finishes));
    }

    /// <summary>What the visit before a start decided about; null = nobody came before it.</summary>
    private static Horizon? Decided(AdviceContext context, PlannedProgram program, ProgramStart start) => PutBackPart.VisitsBack(context, program, context.Site.Clock.DateOf(start.At))
        .Where(v => context.Site.RoundDone(v.Visit) <= start.At)
        .Select(v => v.Horizon)
        .FirstOrDefault();

    private static Horizon Single(ProgramStart start) => new(start.At, [start], [], null) { Closes = start.At };
}
