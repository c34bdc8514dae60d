using System.Text.Json.Nodes;
using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Records;
using DailyAdjust.ServiceTests.Mail;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Disk;

/// <summary>`serve` with mail, killed as by a power cut between its first look and the mailed sheet, and started again: on an invented course, in the full count on more of them and on the example site.</summary>
[Trait("Promise", "1")]
public sealed class KilledServiceTests : IDisposable
{
    private readonly TestHome _serverHome = new();

    public void Dispose() => _serverHome.Dispose();

    [Fact]
    public void The_sheet_is_written_once_and_mailed_and_all_is_as_if_nothing_had_happened()
    {
        using var server = new MailServer(Path.Combine(_serverHome.Path, "server"));
        var random = new Random(6);
        SecondDay[] days = Tried.Times(0, 1) == 1 ? [SecondDay.Example, .. Enumerable.Range(500, 4).Select(seed => SecondDay.Of((ulong)seed))] : [SecondDay.Of(500)];
        var (atSteps, atMoments) = (0, 0);
        foreach (var day in days)
        {
            var (steps, moments) = KilledOn(day, server, random);
            (atSteps, atMoments) = (atSteps + steps, atMoments + moments);
        }

        Assert.True(atSteps > 0 && atMoments > 0, $"{atSteps} at steps, {atMoments} at moments");
        Tried.Held(1, "serve killed at a named step", atSteps);
        Tried.Held(1, "serve killed at a random moment", atMoments);
    }

    private static (int AtSteps, int AtMoments) KilledOn(SecondDay day, MailServer server, Random random)
    {
        using var calm = Home(day, server);
        var log = Path.Combine(calm.Path, "logs", "steps");
        Directory.CreateDirectory(Path.GetDirectoryName(log)!);
        Finish(calm, DiskSteps.Variables(calm.Path, SecondDay.Clock, log));
        var expected = SiteState.Of(SecondDay.Site(calm));
        var steps = StepNames.Of(File.ReadAllLines(log));
        Assert.Superset(new HashSet<string>(["mail", "recording what became of it", "closing days", "report file report.html"], StringComparer.Ordinal), steps.ToHashSet(StringComparer.Ordinal));
        var mailed = Numbers("mail", "recording what became of it");

        // Most of what a service asks of the disk is none of the morning's work: by names, so that each has its turn.
        List<string> names = ["recording the sheet", .. steps.Where(name => name is not ("" or "recording the sheet")).Distinct(StringComparer.Ordinal)];
        var (atSteps, atMoments) = (0, 0);
        for (var home = 0; home < Tried.Times(2, 12); home++)
        {
            // Every second one begins where it is mailed.
            var first = home % 2 == 0 ? mailed : Numbers(names[home / 2 % names.Count]);
            atSteps += Try(day, server, expected, [Kill.Before(first[random.Next(first.Count)]), Kill.Before(1 + random.Next(steps.Count))]);
        }

        for (var home = 0; home < Tried.Times(1, 6); home++)
        {
            atMoments += Try(day, server, expected, [Kill.After(random.Next(300, 3500)), Kill.After(random.Next(300, 3500))]);
        }

        return (atSteps, atMoments);

        List<int> Numbers(params string[] of) => [.. Enumerable.Range(1, steps.Count).Where(i => of.Contains(steps[i - 1], StringComparer.Ordinal))];
    }

    private static int Try(SecondDay day, MailServer server, string expected, IReadOnlyList<Kill> kills)
    {
        server.Forget();
        using var home = Home(day, server);
        var site = SecondDay.Site(home);
        var killed = 0;
        foreach (var kill in kills)
        {
            killed += WasKilled(home, kill) ? 1 : 0;
            SiteState.AssertWhole(site);
            SiteState.AssertEachOnce(site, day.Inbox);
        }

        Finish(home, DiskSteps.Variables(home.Path, SecondDay.Clock));
        Assert.Equal(expected, SiteState.Of(site));
        SiteState.AssertNoLeftovers(home);
        using var ledger = SiteLedger.Open(site.LedgerFile, LedgerMode.Read);
        var promised = Assert.Single(ledger.Outbox.Between(SecondDay.Date, SecondDay.Date));

        // Once, or, where a kill fell between the text and the answer, once more under the same id; never a third time.
        var arrived = server.Messages.Select(m => m.MessageId).ToList();
        Assert.All(arrived, id => Assert.Equal(promised.MessageId, id));
        Assert.InRange(arrived.Count, 1, Math.Max(1, Math.Min(2, promised.Doubts + 1)));
        Assert.Equal(promised.Doubts == Outbox.MostDoubts ? MessageState.Uncertain : MessageState.Sent, promised.State);
        return killed;
    }

    private static TestHome Home(SecondDay day, MailServer server)
    {
        var home = day.HomeWithInbox();
        var mail = new JsonObject
        {
            ["Server"] = "127.0.0.1",
            ["Port"] = server.Port,
            ["Security"] = "none",
            ["From"] = "sheets@golf.example.net",
            ["Recipients"] = new JsonArray(new JsonObject { ["To"] = MailHome.Super }),
            ["RetrySeconds"] = 1,
        };
        File.WriteAllText(home.Home.SettingsFile, new JsonObject { ["DailyAdjust"] = new JsonObject { ["PollSeconds"] = 1, ["Mail"] = mail } }.ToJsonString());
        return home;
    }

    private static bool WasKilled(TestHome home, Kill kill)
    {
        var variables = DiskSteps.Variables(home.Path, SecondDay.Clock);
        using var service = Serve(home, kill.Step > 0 ? variables.KillAt(kill.Step) : variables);
        if (kill.Step == 0)
        {
            Thread.Sleep(kill.Milliseconds);
            service.KillHard();
            return true;
        }

        MailServer.WaitFor("the kill or the end of the work", () => service.HasEnded || (HasLooked(service) && IsDone(home)), () => service.Said);

        // What it does while it stops has steps too.
        var exit = service.Stop();
        Assert.True(exit is 0 or 137, $"exit {exit}");
        return exit == 137;
    }

    private static void Finish(TestHome home, Dictionary<string, string> variables)
    {
        using var service = Serve(home, variables);
        MailServer.WaitFor("the sheet to be written and mailed", () => service.HasEnded || (HasLooked(service) && IsDone(home)), () => service.Said);
        Assert.Equal(0, service.Stop());
    }

    private static RunningService Serve(TestHome home, Dictionary<string, string> variables) => new(new ProgramStart("serve", "--home", home.Path) { Variables = variables });

    /// <summary>It listens to the signal that asks it to stop.</summary>
    private static bool HasLooked(RunningService service) => service.Said.Contains("work begins at", StringComparison.Ordinal);

    private static bool IsDone(TestHome home)
    {
        var site = SecondDay.Site(home);
        if (Directory.GetFiles(site.Inbox).Length > 0)
        {
            return false;
        }

        using var ledger = SiteLedger.Open(site.LedgerFile, LedgerMode.Read);
        return ledger.Mornings.Of(SecondDay.Date) is [{ Step: MorningStep.Written }] && ledger.Outbox.Between(SecondDay.Date, SecondDay.Date) is [{ IsEnded: true }];
    }
}
