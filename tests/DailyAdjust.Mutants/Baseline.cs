using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;

namespace DailyAdjust.Mutants;

/// <summary>Tests of one namespace.</summary>
/// <param name="Name">The namespace.</param>
/// <param name="Classes">Those that pass without a fault.</param>
/// <param name="Takes">How long they take.</param>
/// <param name="Members">Of Core, that they come to.</param>
internal sealed record TestUnit(string Name, IReadOnlyList<string> Classes, TimeSpan Takes, IReadOnlySet<int> Members)
{
    public IEnumerable<string> Arguments => Classes.SelectMany(name => new[] { "-class", name });
}

/// <summary>Tests and the members of Core that they come to.</summary>
internal sealed record Baseline(IReadOnlyList<TestUnit> Units, Reach Reach)
{
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(20);

    public int Count => Units.Count;

    public static Baseline Of(CoreSource source, TestOutput tests)
    {
        var reach = new Reach(source);
        var plain = source.Compile([]) ?? throw new InvalidOperationException("Core does not compile.");
        var classes = tests.With(plain, copy =>
        {
            TestOutput.Run(copy, ["-list", "classes"], Longest, null, out var listed);
            return listed.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Where(name => name.StartsWith("DailyAdjust.", StringComparison.Ordinal)).ToList();
        });
        var units = new ConcurrentBag<TestUnit>();
        Parallel.ForEach(classes.GroupBy(name => name[..name.LastIndexOf('.')], StringComparer.Ordinal), new ParallelOptions { MaxDegreeOfParallelism = tests.Copies }, group =>
        {
            if (Unit(group.Key, [.. group], reach, plain, tests) is { } unit)
            {
                units.Add(unit);
            }
        });
        return new([.. units.OrderBy(unit => unit.Takes)], reach);
    }

    /// <summary>Null = it comes to nothing of Core, or does not pass as it is (it looks at what Core is built from): then it judges nothing.</summary>
    private static TestUnit? Unit(string name, IReadOnlyList<string> classes, Reach reach, byte[] plain, TestOutput tests)
    {
        var noted = Path.Combine(Path.GetTempPath(), string.Create(CultureInfo.InvariantCulture, $"reach-{Guid.NewGuid():N}"));
        var arguments = classes.SelectMany(c => new[] { "-class", c }).ToList();
        var members = tests.With(reach.Assembly, copy =>
        {
            TestOutput.Run(copy, arguments, Longest, noted, out _);
            return File.Exists(noted) ? File.ReadLines(noted).Select(line => int.Parse(line, CultureInfo.InvariantCulture)).ToHashSet() : [];
        });
        File.Delete(noted);
        var begun = Stopwatch.GetTimestamp();
        var end = members.Count == 0 ? TestEnd.Failed : tests.With(plain, copy => TestOutput.Run(copy, arguments, Longest, null, out _));
        var takes = Stopwatch.GetElapsedTime(begun);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {name}: {classes.Count} classes, {members.Count} members, {takes.TotalSeconds:0.0} s{(end == TestEnd.Passed ? "" : ", judges nothing")}"));
        return end == TestEnd.Passed ? new(name, classes, takes, members) : null;
    }
}
