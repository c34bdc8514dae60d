using System.Globalization;

namespace DailyAdjust.Mutants;

/// <summary>What came of all of them.</summary>
internal static class Summary
{
    /// <summary>Of the faults that can be seen, the share that tests see, %.</summary>
    private const double Least = 85;

    /// <returns>0 = enough were seen.</returns>
    public static int Print(IReadOnlyList<Trial> trials, TimeSpan took)
    {
        foreach (var trial in trials.Where(t => t.Fate != Fate.Seen).OrderBy(t => t.Fate).ThenBy(t => t.Mutant.File, StringComparer.Ordinal).ThenBy(t => t.Mutant.Line))
        {
            Console.WriteLine($"{trial.Fate}: {trial.Mutant}   [{trial.How}]");
        }

        foreach (var folder in trials.GroupBy(t => t.Mutant.Folder, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            Console.WriteLine(Line(folder.Key, [.. folder]));
        }

        Console.WriteLine(Line("all", trials) + string.Create(CultureInfo.InvariantCulture, $", {took.TotalSeconds:0} s"));
        var (seen, visible) = Counts(trials);
        var missing = Math.Max(0, (int)Math.Ceiling(Least / 100 * visible) - seen);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{trials.Count} tried, {missing} failed"));
        return missing == 0 && trials.Count > 0 ? 0 : 1;
    }

    private static string Line(string name, IReadOnlyList<Trial> trials)
    {
        var (seen, visible) = Counts(trials);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{name}: {trials.Count} faults, {seen} seen, {visible - seen} not, {trials.Count - visible} that nobody can see: {(visible == 0 ? 100 : 100.0 * seen / visible):0.0} %");
    }

    private static (int Seen, int Visible) Counts(IReadOnlyList<Trial> trials) => (trials.Count(t => t.Fate == Fate.Seen), trials.Count(t => t.Fate != Fate.Equivalent));
}
