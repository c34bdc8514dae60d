using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>
/// Starts that would fit, near the present ones: all of a program's starts move by as much, and none comes where an order or a watering rule forbids it. A program
/// that runs every day may move past midnight; any other keeps its dates, and with them its water days. As many runs are looked at as before: a start that
/// would come before the round is done is not proposed for a date that is already here, because what is run with then was not looked at.
/// </summary>
/// <param name="context">The morning.</param>
/// <param name="nights">Its nights.</param>
/// <param name="isVisited">Whether somebody is at the program's box today.</param>
internal sealed class StartMoves(AdviceContext context, Nights nights, Func<ProgramKey, bool> isVisited)
{
    /// <summary>How far a start is looked for, and in which steps.</summary>
    private static readonly TimeSpan Most = TimeSpan.FromHours(12);
    private const int StepMinutes = 15;

    /// <summary>So long after the nights no known rule may be against a start that is proposed.</summary>
    private static readonly TimeSpan LookedAhead = TimeSpan.FromDays(14);

    /// <summary>For more programs nobody moves starts at a time.</summary>
    private const int MostLookedFor = 12;

    /// <summary>
    /// Cuts with the start at which each would not have been needed, one after another, the most important ground first: each with the starts found before it in place. Programs
    /// of one dial keep their number together.
    /// </summary>
    /// <param name="cuts">Of the night.</param>
    /// <param name="asked">What the ground asks of every program, on the dial.</param>
    /// <param name="inPlace">Those starts, with the numbers that are whole then.</param>
    public IReadOnlyList<NightCut> WithStarts(IReadOnlyList<NightCut> cuts, IReadOnlyDictionary<ProgramKey, double> asked, out ProposedStarts inPlace)
    {
        var cutTo = cuts.ToDictionary(c => c.Program, c => c.ToPercent);
        var alone = new ProposedStarts(context.Programs, asked.ToDictionary(a => a.Key, a => cutTo.GetValueOrDefault(a.Key, a.Value)));
        inPlace = alone;
        var found = new Dictionary<ProgramKey, NightCut>();
        foreach (var program in context.Programs.Where(p => cutTo.ContainsKey(p.Key)).OrderBy(context.RankOf).ThenBy(p => p.Controller.Route).Take(MostLookedFor))
        {
            bool IsWhole(ProgramKey key) => key == program.Key
                || (program.Controller.Applies == PercentApplies.Controller && string.Equals(key.Controller, program.Key.Controller, StringComparison.Ordinal));
            ProposedStarts Whole(ProposedStarts starts) => starts with { Percents = starts.Percents.ToDictionary(p => p.Key, p => IsWhole(p.Key) ? asked[p.Key] : p.Value) };
            if (Moved(program, Whole(inPlace)) is ({ } moved, var by))
            {
                var isFirst = inPlace.MovedBy.Count == 0;
                inPlace = Whole(inPlace).With(moved, by);
                found[program.Key] = cuts.First(c => c.Program == program.Key) with
                {
                    StartThatFits = program.Program.Starts[0].Add(by),
                    HoldsWithOthers = !isFirst && !Fits(program, moved, by, Whole(alone)),
                };
            }
        }

        return [.. cuts.Select(c => found.GetValueOrDefault(c.Program, c))];
    }

    /// <summary>Moves, one after another until everything fits, of programs that have a part in what does not; boxes that are visited today first, then the least important ground.</summary>
    /// <param name="fit">As it is.</param>
    /// <param name="percents">What every program runs at; 0 = off.</param>
    /// <param name="inPlace">Starts that are proposed already, where a number was cut.</param>
    /// <returns>The fit with the moves, and with what they leave.</returns>
    public NightFit Mend(NightFit fit, IReadOnlyDictionary<ProgramKey, double> percents, ProposedStarts? inPlace = null)
    {
        var starts = inPlace ?? new ProposedStarts(context.Programs, percents);
        var moves = new List<StartMove>();
        var misfits = nights.Misfits(starts.Runs(nights));
        var order = context.Programs.Where(p => misfits.Contains(p.Key) && !starts.MovedBy.ContainsKey(p.Key))
            .OrderBy(p => isVisited(p.Key)).ThenBy(context.RankOf).ThenBy(p => p.Controller.Route).Reverse().ToList();
        var later = order.Skip(MostLookedFor).Select(p => p.Key).ToHashSet();
        foreach (var program in order.Take(MostLookedFor).Where(p => misfits.Contains(p.Key)))
        {
            if (Moved(program, starts) is ({ } moved, var by))
            {
                moves.Add(new StartMove(program.Key, program.Program.Starts[0], program.Program.Starts[0].Add(by)));
                starts = starts.With(moved, by);
                misfits = nights.Misfits(starts.Runs(nights));
            }
        }

        List<ProgramKey> left = [.. context.Programs.Where(p => misfits.Contains(p.Key)).OrderBy(p => p.Controller.Route).Select(p => p.Key)];
        List<ProgramKey> none = [.. left.Where(k => !later.Contains(k))];
        var kept = context.Programs.Where(p => !IsDaily(p)).Select(p => p.Key).ToHashSet();
        var runs = nights.Runs(key => percents[key]);
        return fit with
        {
            Reaching = nights.WithEarlierThatFit(fit.Reaching, starts),
            Moves = moves,
            NoStartFits = none,
            KeptOnDate = [.. none.Where(kept.Contains)],
            BeyondPump = [.. none.Select(k => nights.StationBeyondPump(k, runs, Most)).OfType<BeyondPump>()],
            NotLookedFor = [.. left.Where(later.Contains)],
        };
    }

    /// <summary>The program moved by the least with which it fits in beside the others; null = it fits as it is, or nowhere.</summary>
    private (PlannedProgram? Program, TimeSpan By) Moved(PlannedProgram program, ProposedStarts starts)
    {
        var fits = Beside(program, starts);
        if (fits(program, TimeSpan.Zero))
        {
            return default;
        }

        for (var away = StepMinutes; away <= Most.TotalMinutes; away += StepMinutes)
        {
            foreach (var minutes in new[] { -away, away })
            {
                var by = TimeSpan.FromMinutes(minutes);
                if (MovedBy(program, by) is { } moved && fits(moved, by))
                {
                    return (moved, by);
                }
            }
        }

        return default;
    }

    private bool Fits(PlannedProgram program, PlannedProgram moved, TimeSpan by, ProposedStarts starts) => Beside(program, starts)(moved, by);

    /// <summary>Tells whether a program, moved, fits in beside the others, with as many runs as at its present starts.</summary>
    private Func<PlannedProgram, TimeSpan, bool> Beside(PlannedProgram program, ProposedStarts starts)
    {
        var fits = nights.Beside(program, starts.Without(program.Controller).Runs(nights));
        var ofBox = starts.Of(program.Controller);
        bool IsOwn(PlannedRun run) => run.Program.Key == program.Key;
        var count = ofBox.With(program, TimeSpan.Zero).Runs(nights).Count(IsOwn);
        return (moved, by) =>
        {
            var box = ofBox.With(moved, by).Runs(nights);
            return box.Count(IsOwn) == count && fits(box, by) && !IsForbiddenLater(moved, by);
        };
    }

    /// <summary>Whether a watering rule that is known is against a moved start after these nights: whoever moves it does not come back for that.</summary>
    private bool IsForbiddenLater(PlannedProgram moved, TimeSpan by) => by != TimeSpan.Zero && context.Rules.Count > 0
        && context.StartsOf(moved, nights.Ends).TakeWhile(s => s.Start.At < nights.Ends + LookedAhead).Any(s => Prohibitions.IsForbiddenMore(context, moved, s.Start, s.Start.At - by));

    private static bool IsDaily(PlannedProgram program) => program.Program.Days is WaterDays.EveryDay;

    /// <summary>Null where a start would leave its date and the program does not run on every one.</summary>
    private static PlannedProgram? MovedBy(PlannedProgram program, TimeSpan by)
    {
        var starts = new List<TimeOnly>();
        foreach (var start in program.Program.Starts)
        {
            starts.Add(start.Add(by, out var wrapped));
            if (wrapped != 0 && !IsDaily(program))
            {
                return null;
            }
        }

        starts.Sort();
        return program with { Program = program.Program with { Starts = starts } };
    }
}
