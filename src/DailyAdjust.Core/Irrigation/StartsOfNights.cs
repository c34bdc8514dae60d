using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Irrigation;

/// <summary>A start that a program has, whatever it runs at.</summary>
/// <param name="Program">Which.</param>
/// <param name="Start">When.</param>
/// <param name="Out">Stations that are taken out of it; null = all run.</param>
internal readonly record struct StartOfNight(PlannedProgram Program, StartInForce Start, IReadOnlySet<StationKey>? Out);

/// <summary>The starts of one box.</summary>
internal sealed record StartsOfBox(Controller Controller, IReadOnlyList<StartOfNight> Starts);

/// <summary>The starts of some nights, looked for once and laid out at any percentages; a box whose percentages are those of the last time is not laid out again.</summary>
/// <param name="laying">Lays them out.</param>
/// <param name="boxes">In the site's order.</param>
internal sealed class StartsOfNights(NightRuns laying, IReadOnlyList<StartsOfBox> boxes)
{
    private readonly (double[] Percents, IReadOnlyList<PlannedRun> Runs)?[] _laid = new (double[], IReadOnlyList<PlannedRun>)?[boxes.Count];

    /// <summary>All runs, by controller, then by start.</summary>
    /// <param name="percentOf">A program's percentage in a start; 0 = does not run.</param>
    public IReadOnlyList<PlannedRun> At(Func<ProgramKey, StartInForce, double> percentOf)
    {
        var runs = new List<PlannedRun>();
        for (var box = 0; box < boxes.Count; box++)
        {
            runs.AddRange(RunsOf(box, percentOf));
        }

        return runs;
    }

    private IReadOnlyList<PlannedRun> RunsOf(int box, Func<ProgramKey, StartInForce, double> percentOf)
    {
        var starts = boxes[box].Starts;
        var percents = new double[starts.Count];
        for (var i = 0; i < percents.Length; i++)
        {
            percents[i] = percentOf(starts[i].Program.Key, starts[i].Start);
        }

        if (_laid[box] is { } last && last.Percents.AsSpan().SequenceEqual(percents))
        {
            return last.Runs;
        }

        var due = new List<DueStart>(percents.Length);
        for (var i = 0; i < percents.Length; i++)
        {
            if (percents[i] > 0)
            {
                due.Add(starts[i].Start.Due(starts[i].Program, percents[i]) with { Out = starts[i].Out });
            }
        }

        var runs = laying.InTurn(boxes[box].Controller, due);
        _laid[box] = (percents, runs);
        return runs;
    }
}
