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

    /// <summary>For more programs nobody moves starts at a time.</summary>
    private const int MostLookedFor = 12;

    /// <summary>Cuts with the start at which each would not have been needed; programs of one dial keep their number together.</summary>
    /// <param name="cuts">Of the night.</param>
    /// <param name="asked">What the ground asks of every program, on the dial.</param>
    public IEnumerable<NightCut> WithStarts(IReadOnlyList<NightCut> cuts, IReadOnlyDictionary<ProgramKey, double> asked)
    {
        var cutTo = cuts.ToDictionary(c => c.Program, c => c.ToPercent);
        return cuts.Select((c, i) => i >= MostLookedFor ? c : c with { StartThatFits = StartOf(c) });

        TimeOnly? StartOf(NightCut cut)
        {
            var program = context.Programs.First(p => p.Key == cut.Program);
            bool IsWhole(ProgramKey key) => key == cut.Program
                || (program.Controller.Applies == PercentApplies.Controller && string.Equals(key.Controller, cut.Program.Controller, StringComparison.Ordinal));
            return Moved(program, context.Programs, new(), key => !IsWhole(key) && cutTo.TryGetValue(key, out var percent) ? percent : asked[key]) is (not null, var by)
                ? program.Program.Starts[0].Add(by)
                : null;
        }
    }

    /// <summary>Moves, one after another until everything fits, of programs that have a part in what does not; boxes that are visited today first, then the least important ground.</summary>
    /// <param name="fit">As it is.</param>
    /// <param name="percents">What every program runs at; 0 = off.</param>
    /// <returns>The fit with the moves, and with what they leave.</returns>
    public NightFit Mend(NightFit fit, IReadOnlyDictionary<ProgramKey, double> percents)
    {
        double PercentOf(ProgramKey key) => percents[key];
        var moves = new List<StartMove>();
        var programs = context.Programs;
        var movedBy = new Dictionary<ProgramKey, TimeSpan>();
        var misfits = nights.Misfits(nights.Runs(PercentOf));
        var order = programs.Where(p => misfits.Contains(p.Key))
            .OrderBy(p => isVisited(p.Key)).ThenBy(context.RankOf).ThenBy(p => p.Controller.Route).Reverse().ToList();
        var later = order.Skip(MostLookedFor).Select(p => p.Key).ToHashSet();
        foreach (var program in order.Take(MostLookedFor).Where(p => misfits.Contains(p.Key)))
        {
            if (Moved(program, programs, movedBy, PercentOf) is ({ } moved, var by))
            {
                moves.Add(new StartMove(program.Key, program.Program.Starts[0], program.Program.Starts[0].Add(by)));
                programs = With(programs, moved);
                movedBy[program.Key] = by;
                misfits = nights.Misfits(nights.Runs(PercentOf, programs, movedBy));
            }
        }

        List<ProgramKey> left = [.. context.Programs.Where(p => misfits.Contains(p.Key)).OrderBy(p => p.Controller.Route).Select(p => p.Key)];
        List<ProgramKey> none = [.. left.Where(k => !later.Contains(k))];
        var kept = context.Programs.Where(p => !IsDaily(p)).Select(p => p.Key).ToHashSet();
        var runs = nights.Runs(PercentOf);
        return fit with
        {
            Moves = moves,
            NoStartFits = none,
            KeptOnDate = [.. none.Where(kept.Contains)],
            BeyondPump = [.. none.Select(k => nights.StationBeyondPump(k, runs, Most)).OfType<BeyondPump>()],
            NotLookedFor = [.. left.Where(later.Contains)],
        };
    }

    /// <summary>The program moved by the least with which it fits in beside the others; null = it fits as it is, or nowhere.</summary>
    private (PlannedProgram? Program, TimeSpan By) Moved(
        PlannedProgram program, IReadOnlyList<PlannedProgram> programs, Dictionary<ProgramKey, TimeSpan> movedBy, Func<ProgramKey, double> percentOf)
    {
        var ofBox = programs.Where(p => ReferenceEquals(p.Controller, program.Controller)).ToList();
        var fits = nights.Beside(program, nights.Runs(percentOf, [.. programs.Except(ofBox)], movedBy));
        var present = RunsOfBox(program, TimeSpan.Zero);
        var count = present.Count(IsOwn);
        if (fits(present, TimeSpan.Zero))
        {
            return default;
        }

        for (var away = StepMinutes; away <= Most.TotalMinutes; away += StepMinutes)
        {
            foreach (var minutes in new[] { -away, away })
            {
                var by = TimeSpan.FromMinutes(minutes);
                if (MovedBy(program, by) is { } moved && Fits(moved, by))
                {
                    return (moved, by);
                }
            }
        }

        return default;

        bool Fits(PlannedProgram moved, TimeSpan by)
        {
            var box = RunsOfBox(moved, by);
            return box.Count(IsOwn) == count && fits(box, by);
        }

        IReadOnlyList<PlannedRun> RunsOfBox(PlannedProgram moved, TimeSpan by) => nights.Runs(percentOf, With(ofBox, moved), new Dictionary<ProgramKey, TimeSpan>(movedBy) { [program.Key] = by });

        bool IsOwn(PlannedRun run) => run.Program.Key == program.Key;
    }

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

    private static IReadOnlyList<PlannedProgram> With(IReadOnlyList<PlannedProgram> programs, PlannedProgram moved) => [.. programs.Select(p => p.Key == moved.Key ? moved : p)];
}
