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
    public IReadOnlyList<PlannedRun> At(Func<ProgramKey, StartInForce, double> percentOf) => [.. Enumerable.Range(0, boxes.Count).SelectMany(box => RunsOf(box, percentOf))];

    private IReadOnlyList<PlannedRun> RunsOf(int box, Func<ProgramKey, StartInForce, double> percentOf)
    {
        var starts = boxes[box].Starts;
        double[] percents = [.. starts.Select(s => percentOf(s.Program.Key, s.Start))];
        if (_laid[box] is { } last && last.Percents.AsSpan().SequenceEqual(percents))
        {
            return last.Runs;
        }

        var due = starts.Zip(percents).Where(s => s.Second > 0).Select(s => s.First.Start.Due(s.First.Program, s.Second) with { Out = s.First.Out });
        var runs = laying.InTurn(boxes[box].Controller, due);
        _laid[box] = (percents, runs);
        return runs;
    }
}
