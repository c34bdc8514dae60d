using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Disk;

/// <summary>`morning` and `ingest`, killed as by a power cut: nothing is lost, nothing is there twice.</summary>
[Trait("Promise", "1")]
public sealed class KilledCommandTests
{
    /// <summary>What a kill has to meet; the steps of the report's files are met in turn.</summary>
    private static readonly string[] MorningSteps =
    [
        "reading a file", "putting a file away", "committing what came in", "closing days", "recording the sheet", "recording what became of it", "the week's books", "the page over all sites",
    ];

    private static readonly string[] ReportSteps =
        [.. new[] { "report.html", "report.txt", "report-full.txt", "round.csv", "advice.csv", "advice.json" }.Select(file => "report file " + file)];

    [Fact]
    public void A_morning_that_is_killed_at_every_named_step_is_finished_as_if_nothing_had_happened()
    {
        using var runs = new KilledRuns(SecondDay.HomeWithInbox, home => ["morning", "--home", home.Path], 0);
        Sweep("morning", runs, [.. MorningSteps, .. ReportSteps], kills: 3);
    }

    [Fact]
    public void An_ingest_that_is_killed_at_every_named_step_takes_each_file_once()
    {
        using var runs = new KilledRuns(HomeWithFiles, Ingest, 2);
        Sweep("ingest", runs, ["reading a file", "committing what came in"], kills: 2);
    }

    [Fact]
    public void At_any_moment()
    {
        var random = new Random(20260609);
        Moments("morning", new KilledRuns(SecondDay.HomeWithInbox, home => ["morning", "--home", home.Path], 0), Tried.Times(1, 30), random);
        Moments("ingest", new KilledRuns(HomeWithFiles, Ingest, 2), Tried.Times(1, 12), random);
    }

    /// <summary>One step of each name, or, in the full count, every single one.</summary>
    /// <param name="command">Its name.</param>
    /// <param name="runs">The command on its homes.</param>
    /// <param name="names">That there must be.</param>
    /// <param name="kills">To a home: those after the first come when less is left to do.</param>
    private static void Sweep(string command, KilledRuns runs, string[] names, int kills)
    {
        var random = new Random(1);
        var byName = Enumerable.Range(1, runs.Steps.Count).GroupBy(step => runs.Steps[step - 1], StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.ToList(), StringComparer.Ordinal);
        Assert.Superset(names.ToHashSet(StringComparer.Ordinal), byName.Keys.ToHashSet(StringComparer.Ordinal));
        List<int> chosen = Tried.Times(0, 1) == 1
            ? [.. Enumerable.Range(1, runs.Steps.Count)]
            : [.. names.Where(name => !ReportSteps.Skip(2).Contains(name, StringComparer.Ordinal)).Select(name => byName[name][random.Next(byName[name].Count)])];
        var killed = 0;
        foreach (var step in chosen)
        {
            var count = runs.Try([Kill.Before(step), .. Enumerable.Range(1, kills - 1).Select(_ => Kill.Before(1 + random.Next(step)))]);
            Assert.True(count > 0, $"{command} was not killed at step {step} ({runs.Steps[step - 1]})");
            killed += count;
        }

        Tried.Held(1, $"{command} killed at a named step", killed);
    }

    private static void Moments(string command, KilledRuns given, int homes, Random random)
    {
        using var runs = given;
        var killed = 0;
        var most = (int)runs.Took.TotalMilliseconds;
        for (var home = 0; home < homes; home++)
        {
            killed += runs.Try(Kill.After(random.Next(most / 4, most)), Kill.After(random.Next(most / 4, most)), Kill.After(random.Next(most / 4, most)));
        }

        Assert.True(killed > 0);
        Tried.Held(1, $"{command} killed at a random moment", killed);
    }

    private static TestHome HomeWithFiles()
    {
        var home = SecondDay.Home();
        SecondDay.PutFiles(Directory.CreateDirectory(Path.Combine(home.Path, "files")).FullName);
        return home;
    }

    private static string[] Ingest(TestHome home) =>
        ["ingest", "--home", home.Path, .. SecondDay.Inbox.Keys.Order(StringComparer.Ordinal).Select(name => Path.Combine(home.Path, "files", name))];
}
