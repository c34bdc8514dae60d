namespace DailyAdjust.Mutants;

/// <summary>Which of all faults are tried: by seed alone, in an order that a larger sample goes on with.</summary>
internal static class MutantSample
{
    public static IReadOnlyList<Mutant> Of(CoreSource source, MutantOptions options)
    {
        var all = source.Files.SelectMany(Mutations.In).Where(m => options.Folder is null || string.Equals(m.Folder, options.Folder, StringComparison.Ordinal)).ToArray();
        new Random(options.Seed).Shuffle(all);
        Console.WriteLine(FormattableString.Invariant($"{all.Length} faults that could be put in, {options.Count} of them are"));
        return all;
    }
}
