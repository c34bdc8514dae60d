using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Disk;

/// <summary>`morning` and `ingest`, killed as by a power cut, on the example site and on invented courses: nothing is lost, nothing is there twice.</summary>
[Trait("Promise", "1")]
public sealed class KilledCommandTests
{
    /// <summary>What a kill has to meet, beside the steps of the report's files.</summary>
    private static readonly string[] MorningSteps =
    [
        "reading a file", "putting a file away", "committing what came in", "closing days", "recording the sheet", "recording what became of it", "the week's books", "the page over all sites",
    ];

    private static readonly string[] ReportSteps =
        [.. new[] { "report.html", "report.txt", "report-full.txt", "round.csv", "advice.csv", "advice.json" }.Select(file => "report file " + file)];

    [Fact]
    public void A_morning_that_is_killed_at_every_named_step_is_finished_as_if_nothing_had_happened() =>
        Sweep("morning", Morning, [.. MorningSteps, .. ReportSteps], kills: 3, firstSeed: 100);

    [Fact]
    public void An_ingest_that_is_killed_at_every_named_step_takes_each_file_once() =>
        Sweep("ingest", Ingest, ["reading a file", "committing what came in"], kills: 2, firstSeed: 200);

    [Fact]
    public void At_any_moment()
    {
        var random = new Random(20260609);
        List<SecondDay> courses = [.. Enumerable.Range(300, Tried.Times(1, 15)).Select(seed => SecondDay.Of((ulong)seed))];
        Moments("morning", Morning, courses, Tried.Times(0, 15), random);
        Moments("ingest", Ingest, courses[..Tried.Times(1, 6)], Tried.Times(0, 6), random);
    }

    /// <summary>One step of each name, on the example, every fourth on an invented course; in the full count every single one on the example, and each name on some courses.</summary>
    /// <param name="command">Its name.</param>
    /// <param name="on">The command on copies of a home.</param>
    /// <param name="names">That there must be.</param>
    /// <param name="kills">To a home: those after the first come when less is left to do. A course, which has an undisturbed run of its own, gets one fewer.</param>
    /// <param name="firstSeed">Of the first invented course; the next one has the next.</param>
    private static void Sweep(string command, Func<SecondDay, KilledRuns> on, string[] names, int kills, ulong firstSeed)
    {
        var random = new Random(1);
        var isFull = Tried.Times(0, 1) == 1;
        List<string> met = [.. names.Where(name => isFull || !ReportSteps.Skip(1).Contains(name, StringComparer.Ordinal))];
        List<string> onCourses = isFull ? [.. Enumerable.Repeat(met, 3).SelectMany(name => name)] : [.. met.Where((_, i) => i % 4 == 3)];
        using (var runs = on(SecondDay.Example))
        {
            var byName = ByName(runs, names);
            List<int> chosen = isFull ? [.. Enumerable.Range(1, runs.Steps.Count)] : [.. met.Except(onCourses, StringComparer.Ordinal).Select(name => OneOf(byName[name]))];
            Tried.Held(1, $"{command} killed at a named step", chosen.Sum(step => KilledAt(runs, step, kills)));
        }

        var killed = 0;
        foreach (var name in onCourses)
        {
            using var runs = on(SecondDay.Of(firstSeed++));
            killed += KilledAt(runs, OneOf(ByName(runs, names)[name]), kills - 1);
        }

        if (onCourses.Count > 0)
        {
            Tried.Held(1, $"{command} of an invented course killed at a named step", killed);
        }

        int OneOf(List<int> steps) => steps[random.Next(steps.Count)];

        int KilledAt(KilledRuns runs, int step, int kills)
        {
            var count = runs.Try([Kill.Before(step), .. Enumerable.Range(1, kills - 1).Select(_ => Kill.Before(1 + random.Next(step)))]);
            Assert.True(count > 0, $"{command} was not killed at step {step} ({runs.Steps[step - 1]})");
            return count;
        }
    }

    /// <summary>The numbers of the steps of each name.</summary>
    private static Dictionary<string, List<int>> ByName(KilledRuns runs, string[] names)
    {
        var byName = Enumerable.Range(1, runs.Steps.Count).GroupBy(step => runs.Steps[step - 1], StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.ToList(), StringComparer.Ordinal);
        Assert.Superset(names.ToHashSet(StringComparer.Ordinal), byName.Keys.ToHashSet(StringComparer.Ordinal));
        return byName;
    }

    /// <summary>One home of each course, and some of the example's.</summary>
    private static void Moments(string command, Func<SecondDay, KilledRuns> on, IReadOnlyList<SecondDay> courses, int examples, Random random)
    {
        var killed = 0;
        foreach (var course in courses)
        {
            using var runs = on(course);
            killed += Killed(runs);
        }

        Told($"{command} of an invented course killed at a random moment");
        if (examples > 0)
        {
            using var runs = on(SecondDay.Example);
            killed = Enumerable.Range(0, examples).Sum(_ => Killed(runs));
            Told($"{command} killed at a random moment");
        }

        int Killed(KilledRuns runs)
        {
            var most = (int)runs.Took.TotalMilliseconds;
            return runs.Try(Kill.After(random.Next(most / 4, most)), Kill.After(random.Next(most / 4, most)), Kill.After(random.Next(most / 4, most)));
        }

        void Told(string what)
        {
            Assert.True(killed > 0, $"never: {what}");
            Tried.Held(1, what, killed);
        }
    }

    private static KilledRuns Morning(SecondDay day) => new(day.HomeWithInbox, home => ["morning", "--home", home.Path], 0);

    private static KilledRuns Ingest(SecondDay day) => new(
        day.HomeWithFiles, home => ["ingest", "--home", home.Path, .. day.Inbox.Keys.Order(StringComparer.Ordinal).Select(name => Path.Combine(SecondDay.FilesOf(home), name))], 2);
}
