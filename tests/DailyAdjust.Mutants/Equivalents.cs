namespace DailyAdjust.Mutants;

/// <summary>Faults that are none: what they change nobody can see. Each stands in equivalent.csv with its reason, and is told with it.</summary>
internal static class Equivalents
{
    private static readonly Dictionary<(string File, string Change), string> Known = File.ReadLines(Path.Combine(AppContext.BaseDirectory, "equivalent.csv")).Skip(1)
        .Select(line => line.Split('\t')).ToDictionary(cells => (cells[0], cells[1]), cells => cells[2]);

    /// <summary>Why nobody can see it; null = it is not known for one.</summary>
    public static string? WhyOf(Mutant mutant) => Known.GetValueOrDefault((mutant.File, mutant.Was + " -> " + mutant.Becomes));
}
