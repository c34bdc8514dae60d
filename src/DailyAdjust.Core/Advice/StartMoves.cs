using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Starts that would fit: near the present ones, in the watering hours and outside hours that a watering rule forbids.</summary>
internal sealed class StartMoves(AdviceContext context, Nights nights)
{
    /// <summary>How far a start is looked for, and in which steps.</summary>
    private const int MostMinutes = 12 * 60;
    private const int StepMinutes = 15;

    /// <summary>More starts than these nobody moves at a time.</summary>
    private const int MostLookedFor = 12;

    /// <summary>Cuts with the start at which each alone would not have been needed.</summary>
    /// <param name="cuts">Of the night.</param>
    /// <param name="asked">What the ground asks of every program, on the dial.</param>
    public IEnumerable<NightCut> Uncut(IReadOnlyList<NightCut> cuts, IReadOnlyDictionary<ProgramKey, double> asked)
    {
        var cutTo = cuts.ToDictionary(c => c.Program, c => c.ToPercent);
        return cuts.Select((c, i) => i >= MostLookedFor ? c : c with
        {
            StartThatFits = Moved(
                context.Programs.First(p => p.Key == c.Program),
                context.Programs,
                key => key != c.Program && cutTo.TryGetValue(key, out var percent) ? percent : asked[key])?.Program.Starts[0],
        });
    }

    /// <summary>Moves, one after another, of programs that have a part in what does not fit; the least important ground moves first.</summary>
    /// <param name="percents">What every program runs at; 0 = off.</param>
    public IReadOnlyList<StartMove> Of(IReadOnlyDictionary<ProgramKey, double> percents)
    {
        double PercentOf(ProgramKey key) => percents[key];
        var moves = new List<StartMove>();
        var programs = context.Programs;
        var misfits = nights.Misfits(nights.Runs(PercentOf));
        foreach (var program in programs.Where(p => misfits.Contains(p.Key)).OrderBy(context.RankOf).ThenBy(p => p.Controller.Route).Reverse().Take(MostLookedFor))
        {
            if (Moved(program, programs, PercentOf) is { } moved && moved.Program.Starts[0] != program.Program.Starts[0])
            {
                moves.Add(new StartMove(program.Key, program.Program.Starts[0], moved.Program.Starts[0]));
                programs = [.. programs.Select(p => p.Key == moved.Key ? moved : p)];
            }
        }

        return moves;
    }

    /// <summary>The program with all its starts moved by the least with which it fits in beside the others, 0 where it does already; null = there is none.</summary>
    private PlannedProgram? Moved(PlannedProgram program, IReadOnlyList<PlannedProgram> programs, Func<ProgramKey, double> percentOf)
    {
        var fits = nights.Beside(nights.Runs(percentOf, [.. programs.Where(p => p.Key != program.Key)]));
        for (var away = 0; away <= MostMinutes; away += StepMinutes)
        {
            foreach (var minutes in new[] { -away, away })
            {
                if (MovedBy(program, minutes) is { } moved && fits(nights.Runs(percentOf, [moved])))
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
}
