using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Starts that would fit: near the present ones, in the watering hours and outside hours that a watering rule forbids.</summary>
internal sealed class StartMoves(AdviceContext context, Nights nights)
{
    private const double Tolerance = 1e-6;

    /// <summary>How far a start is looked for, and in which steps.</summary>
    private const int MostMinutes = 12 * 60;
    private const int StepMinutes = 15;

    /// <summary>More starts than these nobody moves at a time.</summary>
    private const int MostProposed = 12;

    /// <summary>Cuts with the start at which each alone would not have been needed.</summary>
    /// <param name="cuts">Of the night.</param>
    /// <param name="asked">What the ground asks of every program, on the dial.</param>
    public IEnumerable<NightCut> Beside(IReadOnlyList<NightCut> cuts, IReadOnlyDictionary<ProgramKey, double> asked)
    {
        if (cuts.Count == 0)
        {
            return cuts;
        }

        var cutTo = cuts.ToDictionary(c => c.Program, c => c.ToPercent);
        double After(ProgramKey key) => cutTo.TryGetValue(key, out var percent) ? percent : asked[key];
        var most = nights.Misfit(nights.Runs(After));
        return cuts.Select((c, i) => i >= MostProposed ? c : c with
        {
            StartThatFits = Moved(context.Programs.First(p => p.Key == c.Program), context.Programs, key => key == c.Program ? c.FromPercent : After(key), most)?.Program.Starts[0],
        });
    }

    /// <summary>Moves, one after another, of programs that add to what does not fit; the least important ground moves first.</summary>
    /// <param name="percents">What every program runs at; 0 = off.</param>
    public IReadOnlyList<StartMove> Of(IReadOnlyDictionary<ProgramKey, double> percents)
    {
        var moves = new List<StartMove>();
        var programs = context.Programs;
        var misfit = nights.Misfit(nights.Runs(key => percents[key]));
        foreach (var program in context.Programs.Where(p => percents[p.Key] > 0).OrderBy(context.RankOf).ThenBy(p => p.Controller.Route).Reverse())
        {
            if (misfit <= Tolerance || moves.Count == MostProposed)
            {
                break;
            }

            var without = nights.Misfit(nights.Runs(key => key == program.Key ? 0 : percents[key], programs));
            if (without < misfit - Tolerance && Moved(program, programs, key => percents[key], without) is { } moved)
            {
                moves.Add(new StartMove(program.Key, program.Program.Starts[0], moved.Program.Starts[0]));
                programs = With(programs, moved);
                misfit = without;
            }
        }

        return moves;
    }

    /// <summary>The program with all its starts moved by the least with which no more than so much does not fit; null = there is none.</summary>
    private PlannedProgram? Moved(PlannedProgram program, IReadOnlyList<PlannedProgram> programs, Func<ProgramKey, double> percentOf, double most)
    {
        for (var away = StepMinutes; away <= MostMinutes; away += StepMinutes)
        {
            foreach (var minutes in new[] { -away, away })
            {
                if (MovedBy(program, minutes) is { } moved && nights.Misfit(nights.Runs(percentOf, With(programs, moved))) <= most + Tolerance)
                {
                    return moved;
                }
            }
        }

        return null;
    }

    /// <summary>Null where a start would leave the hours in which it may be, or its date.</summary>
    private PlannedProgram? MovedBy(PlannedProgram program, int minutes)
    {
        var starts = new List<TimeOnly>();
        foreach (var start in program.Program.Starts)
        {
            var moved = start.AddMinutes(minutes, out var wrapped);
            if (wrapped != 0 || !nights.Allows(moved) || Prohibitions.RulesFor(context, program).Any(r => r.HoldsOn(context.Date) && r.HoursNotAllowed?.Contains(moved) == true))
            {
                return null;
            }

            starts.Add(moved);
        }

        return program with { Program = program.Program with { Starts = starts } };
    }

    private static IReadOnlyList<PlannedProgram> With(IReadOnlyList<PlannedProgram> programs, PlannedProgram moved) => [.. programs.Select(p => p.Key == moved.Key ? moved : p)];
}
