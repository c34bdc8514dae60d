using DailyAdjust.Ledger.Records;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>The rules of a site's zone change while it is in use (a country gives up summer time, and the system is updated), or the site gets another zone.</summary>
[Trait("Promise", "5")]
public sealed class ZoneRulesTests : IDisposable
{
    /// <summary>Chicago stays on winter time from 10 June 2026 on.</summary>
    private const string NewRules =
        """
        Rule S 2007 max - Mar Sun>=8 2:00 1:00 D
        Rule S 2007 max - Nov Sun>=1 2:00 0 S
        Zone America/Chicago -6:00 S C%sT 2026 Jun 10 0:00
                             -6:00 - CST

        """;

    private readonly TestHome _home = new();

    public ZoneRulesTests() => Tool.Need("gcc", "zic");

    public void Dispose() => _home.Dispose();

    [Fact]
    public void A_zone_whose_rules_changed_moves_the_hour_and_what_was_derived_is_derived_anew()
    {
        var site = ExampleSite.TakenIn(_home);
        using var clock = new MovedClock(Utc(9, 9, 51));
        using (var before = new Served(_home, clock.Variables))
        {
            Served.WaitFor("the sheet of the 9th", () => Served.IsOut(site, June(9)));
            before.Stop();
        }

        var rules = Rules(_home);
        clock.Set(Utc(10, 9, 55));
        using (var after = new Served(_home, clock.Variables, rules))
        {
            // 05:00 by the old rules, 04:00 by the new ones.
            after.LetItLook(site);
            Assert.False(Served.IsOut(site, June(10)));
            clock.Set(Utc(10, 10, 51));
            Served.WaitFor("the sheet of the 10th", () => Served.IsOut(site, June(10)));
            after.Stop();
        }

        var mornings = Served.Mornings(site);
        Assert.Equal([(June(9), Utc(9, 10, 0)), (June(10), Utc(10, 11, 0))], mornings.Select(m => (m.Date, m.AsOf)));
        Assert.Equal("2099z", mornings[1].TimeZones);
        Assert.NotEqual("2099z", mornings[0].TimeZones);

        // The same as in a home that never knew the old rules.
        using var fresh = new TestHome();
        ExampleSite.PutInto(fresh);
        Assert.Equal(0, Run(fresh, rules, "ingest", ExampleSite.Weather, ExampleSite.Logbook).ExitCode);
        foreach (var command in (string[])["weather", "balance"])
        {
            var (ours, theirs) = (Run(_home, rules, command, "--to", "2026-06-17", "--format", "csv"), Run(fresh, rules, command, "--to", "2026-06-17", "--format", "csv"));
            Assert.True(ours.ExitCode == 0, ours.ToString());
            Assert.Equal(theirs.Output, ours.Output);
        }

        Assert.NotEqual(Run(fresh, new Dictionary<string, string>(StringComparer.Ordinal), "weather", "--format", "csv").Output, Run(fresh, rules, "weather", "--format", "csv").Output);
        Tried.Held(5, "rules of a zone changed", 1);
    }

    [Fact]
    public void A_site_that_gets_another_zone_has_its_next_sheet_at_its_new_hour()
    {
        (string Zone, DateTimeOffset Next)[] zones = [("Pacific/Auckland", Utc(9, 17, 0)), ("America/Denver", Utc(10, 11, 0)), ("Pacific/Honolulu", Utc(10, 15, 0))];
        var count = Tried.Times(1, zones.Length);
        foreach (var (zone, next) in zones.Take(count))
        {
            GetsAnotherZone(zone, next);
        }

        Tried.Held(5, "zone of a site changed", count);
    }

    private static void GetsAnotherZone(string zone, DateTimeOffset next)
    {
        using var home = new TestHome();
        var site = ExampleSite.TakenIn(home);
        using var clock = new MovedClock(Utc(9, 9, 51));
        using var service = new Served(home, clock.Variables);
        Served.WaitFor("the sheet of the 9th", () => Served.IsOut(site, June(9)));

        // Edited at 11 in the morning.
        clock.Set(Utc(9, 16, 0));
        File.WriteAllText(site.SiteFile, File.ReadAllText(site.SiteFile).Replace("America/Chicago", zone, StringComparison.Ordinal));
        Served.WaitFor("the edit", () => service.Log().Contains("holds from 2026-06-10", StringComparison.Ordinal));
        service.LetItLook(site);
        clock.Set(next.AddMinutes(-12));
        service.LetItLook(site);
        Assert.All(Served.Mornings(site), m => Assert.Equal((June(9), MorningStep.Written), (m.Date, m.Step)));
        clock.Set(next.AddMinutes(-9));
        Served.WaitFor("the next sheet", () => Served.IsOut(site, June(10)));
        service.LetItLook(site);
        service.Stop();

        // An edit before the round is walked may make another issue of its own day's sheet.
        var mornings = Served.Mornings(site);
        Assert.Equal((June(9), 1, Utc(9, 10, 0)), (mornings[0].Date, mornings[0].Issue, mornings[0].AsOf));
        var tenth = Assert.Single(mornings, m => m.Date != June(9));
        Assert.Equal((June(10), 1, next, MorningStep.Written), (tenth.Date, tenth.Issue, tenth.AsOf, tenth.Step));
    }

    private static DateOnly June(int day) => new(2026, 6, day);

    private static DateTimeOffset Utc(int day, int hour, int minute) => new(2026, 6, day, hour, minute, 0, TimeSpan.Zero);

    private static Dictionary<string, string> Rules(TestHome home)
    {
        var folder = Path.Combine(home.Path, "zones");
        var source = Path.Combine(home.Path, "zones.txt");
        File.WriteAllText(source, NewRules.ReplaceLineEndings("\n"));
        var compiled = Tool.Run("zic", "-d", folder, source);
        Assert.True(compiled.ExitCode == 0, compiled.ToString());
        File.WriteAllText(Path.Combine(folder, "tzdata.zi"), "# version 2099z\n");
        return new Dictionary<string, string>(StringComparer.Ordinal) { ["TZDIR"] = folder };
    }

    private static ProgramResult Run(TestHome home, IReadOnlyDictionary<string, string> variables, string command, params string[] arguments) =>
        RunningProgram.Run(new ProgramStart([command, "--home", home.Path, .. arguments]) { Variables = variables });
}
