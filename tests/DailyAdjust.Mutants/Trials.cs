using System.Collections.Concurrent;
using System.Globalization;

namespace DailyAdjust.Mutants;

/// <summary>What the tests made of a fault.</summary>
internal enum Fate
{
    /// <summary>A test failed, or did not end.</summary>
    Seen,

    /// <summary>Every test passed.</summary>
    NotSeen,

    /// <summary>Nobody can see it: equivalent.csv says why.</summary>
    Equivalent,
}

/// <summary>What became of one fault.</summary>
internal sealed record Trial(Mutant Mutant, Fate Fate, string How);

/// <summary>Puts in one fault after another and runs the tests that come to it: the nearest first, then the results on record, which see most.</summary>
internal static class Trials
{
    private const string Recorded = "DailyAdjust.Tests.Recorded";

    /// <summary>Tests that take no longer together are run at once.</summary>
    private static readonly TimeSpan Short = TimeSpan.FromSeconds(10);

    public static IReadOnlyList<Trial> Run(CoreSource source, IReadOnlyList<Mutant> sample, Baseline baseline, TestOutput tests, MutantOptions options)
    {
        var trials = new ConcurrentBag<Trial>();
        var next = new ConcurrentQueue<Mutant>(sample);
        var (begun, failed) = (0, 0);
        Parallel.For(0, options.Workers, _ =>
        {
            while (Interlocked.Increment(ref begun) <= options.Count)
            {
                // One that does not compile is no fault that could be made: the next takes its place.
                while (true)
                {
                    if (!next.TryDequeue(out var mutant))
                    {
                        return;
                    }

                    if (Equivalents.WhyOf(mutant) is { } why)
                    {
                        Add(new(mutant, Fate.Equivalent, why));
                        break;
                    }

                    if (source.Compile(mutant) is { } core)
                    {
                        Add(tests.With(core, copy => Try(mutant, baseline, copy)));
                        break;
                    }

                    Interlocked.Increment(ref failed);
                }
            }
        });
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{failed} more did not compile"));
        return [.. trials];

        void Add(Trial trial)
        {
            trials.Add(trial);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{trials.Count,4} {trial.Fate,-10} {trial.Mutant}   [{trial.How}]"));
        }
    }

    private static Trial Try(Mutant mutant, Baseline baseline, string copy)
    {
        var member = baseline.Reach.Of(mutant);
        var reaching = baseline.Units.Where(unit => member is null || unit.Members.Contains(member.Value)).ToList();
        var near = reaching.Where(unit => IsNear(unit, mutant)).ToList();
        var recorded = reaching.Where(unit => string.Equals(unit.Name, Recorded, StringComparison.Ordinal)).ToList();
        var rest = reaching.Except(near).Except(recorded).ToList();
        foreach (var units in new[] { near, recorded, rest.FindAll(u => u.Takes <= Short), rest.FindAll(u => u.Takes > Short) }.Where(units => units.Count > 0))
        {
            var limit = TimeSpan.FromSeconds(60 + (5 * units.Sum(u => u.Takes.TotalSeconds)));
            var end = TestOutput.Run(copy, ["-stopOnFail", .. units.SelectMany(u => u.Arguments)], limit, null, out var printed);
            if (end != TestEnd.Passed)
            {
                return new(mutant, Fate.Seen, end == TestEnd.TimedOut ? "no end" : FirstFailure(printed));
            }
        }

        return new(mutant, Fate.NotSeen, reaching.Count == 0 ? "no test comes to it" : FormattableString.Invariant($"{reaching.Sum(u => u.Classes.Count)} classes came to it"));
    }

    /// <summary>Tests mirror the folders of the source.</summary>
    private static bool IsNear(TestUnit unit, Mutant mutant) =>
        string.Equals(unit.Name, "DailyAdjust.Tests." + Path.GetDirectoryName(mutant.File)!.Replace('/', '.'), StringComparison.Ordinal);

    private static string FirstFailure(string printed) =>
        printed.Split('\n').Select(line => line.Trim()).FirstOrDefault(line => line.EndsWith("[FAIL]", StringComparison.Ordinal))?.Replace(" [FAIL]", "", StringComparison.Ordinal) is { } test
            ? test[..Math.Min(test.Length, 120)]
            : "the run ended";
}
