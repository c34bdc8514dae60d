using System.Text.Json.Nodes;
using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Records;
using DailyAdjust.Service.Home;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace DailyAdjust.ServiceTests.Mail;

/// <summary>Who is promised which sheet: the whole command line at a given time, with a real server.</summary>
public sealed class MailedChangesTests : IDisposable
{
    private const string Always = "always@example.com";
    private const string Changes = "changes@example.com";

    private readonly TestHome _home = new();
    private readonly SiteFolder _site;
    private readonly MailServer _server;

    public MailedChangesTests()
    {
        _site = ExampleSite.TakenIn(_home);
        _server = new MailServer(Path.Combine(_home.Path, "server"));
        Settings(_server.Port);
    }

    public void Dispose()
    {
        _server.Dispose();
        _home.Dispose();
    }

    [Fact]
    public void Who_wants_only_changes_gets_none_of_a_day_without_and_everybody_the_day_with()
    {
        // The one dial that 16 June of the example site asks for (expected-advice.csv) is turned before the sheet; 17 June asks for four.
        Dial("C1/P2", "25", "2026-06-16 04:50");
        Morning("2026-06-16 05:00");
        Assert.Equal([("2026-06-16/1", Always)], Sent());
        Assert.Equal("Tamarack Flats Municipal, Tue 16 June: no dial to turn", Subjects()[0]);
        Morning("2026-06-17 05:00");
        Assert.Equal([("2026-06-16/1", Always), ("2026-06-17/1", Always), ("2026-06-17/1", Changes)], Sent());
        Assert.StartsWith("Tamarack Flats Municipal, Wed 17 June: 4 changes at 2 boxes (", Subjects()[2], StringComparison.Ordinal);
    }

    [Fact]
    public void A_later_issue_goes_out_only_where_it_asks_for_something_else()
    {
        Morning("2026-06-16 05:00");
        Morning("2026-06-16 05:20");
        Assert.Equal(2, Sent().Count);

        // Somebody has turned the dial: nothing is left to change, and who was sent the change has to know.
        Dial("C1/P2", "25", "2026-06-16 05:30");
        Morning("2026-06-16 05:50");
        Assert.Equal([("2026-06-16/1", Always), ("2026-06-16/1", Changes), ("2026-06-16/3", Always), ("2026-06-16/3", Changes)], Sent());
        Assert.Contains("Tue 16 June, issue 3 (replaces issue 2): no dial to turn", Subjects()[2], StringComparison.Ordinal);
    }

    [Fact]
    public void A_sheet_that_still_waits_gives_way_to_the_newer_one()
    {
        _server.Behave("450");
        Morning("2026-06-15 05:00");
        _server.Behave("ok");
        var result = Morning("2026-06-16 05:00");
        Assert.Equal([("2026-06-16/1", Always), ("2026-06-16/1", Changes)], Sent());
        Assert.Contains(Outbox(), m => m is { Date.Day: 15, State: MessageState.Replaced, Tries: 1 });
        Assert.Contains("The mail of sheet 2026-06-15/1 to always@example.com and changes@example.com has not gone out yet, 1 try so far", Flat("2026-06-16"), StringComparison.Ordinal);
        Assert.Contains("450 4.2.1 come back later", Flat("2026-06-16"), StringComparison.Ordinal);
        Assert.Equal(2, result.Output.Split(": sent").Length - 1);
    }

    [Fact]
    public void What_nobody_took_is_given_up_at_its_age_and_told()
    {
        _server.Behave("450");
        Morning("2026-06-16 05:00");
        _server.Behave("ok");
        var now = InProcess.Run(At("2026-06-17 06:00"), ["mail", "--now", "--home", _home.Path]);
        Assert.Equal(1, now.ExitCode);
        Assert.Contains("given up: not taken within 24 h (tries: 1), the last: ", now.Error, StringComparison.Ordinal);
        Assert.All(Outbox(), m => Assert.Equal(MessageState.GivenUp, m.State));
        Assert.Empty(_server.Messages);
        Morning("2026-06-17 06:10");
        Assert.Contains("to always@example.com and changes@example.com has been given up: not taken within 24 h", Flat("2026-06-17"), StringComparison.Ordinal);
    }

    private static FakeTimeProvider At(string local)
    {
        var zone = TimeZoneInfo.FindSystemTimeZoneById("America/Chicago");
        var time = DateTime.Parse(local, System.Globalization.CultureInfo.InvariantCulture);
        return new FakeTimeProvider(new DateTimeOffset(time, zone.GetUtcOffset(time)).ToUniversalTime());
    }

    private void Dial(string program, string percent, string local)
    {
        var log = InProcess.Run(At(local), ["log", "setting", program, percent, "--time", local, "--home", _home.Path]);
        Assert.True(log.ExitCode == 0, log.ToString());
    }

    private ProgramResult Morning(string local)
    {
        var result = InProcess.Run(At(local), ["morning", "--home", _home.Path]);
        Assert.True(result.ExitCode == 0, result.ToString());
        return result;
    }

    private IReadOnlyList<OutboxMessage> Outbox()
    {
        using var ledger = SiteLedger.Open(_site.LedgerFile, LedgerMode.Read);
        return ledger.Outbox.Between(DateOnly.MinValue, DateOnly.MaxValue);
    }

    private List<(string Sheet, string To)> Sent()
    {
        var sent = Outbox().Where(m => m.State == MessageState.Sent).ToList();
        Assert.Equal(sent.Select(m => m.MessageId).Order(StringComparer.Ordinal), _server.Messages.Select(m => m.MessageId!).Order(StringComparer.Ordinal));
        return [.. sent.Select(m => (FormattableString.Invariant($"{m.Date:yyyy-MM-dd}/{m.Issue}"), m.Recipient))];
    }

    private List<string> Subjects() => [.. _server.Messages.Select(m => m.Subject!)];

    private string Flat(string date) => string.Join(' ', File.ReadAllText(Path.Combine(_site.ReportFolder(DateOnly.ParseExact(date, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)), "report-full.txt"))
        .Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private void Settings(int port) => File.WriteAllText(_home.Home.SettingsFile, new JsonObject
    {
        ["DailyAdjust"] = new JsonObject
        {
            ["Mail"] = new JsonObject
            {
                ["Server"] = "127.0.0.1",
                ["Port"] = port,
                ["Security"] = "none",
                ["From"] = "sheets@golf.example.net",
                ["Recipients"] = new JsonArray(new JsonObject { ["To"] = Always }, new JsonObject { ["To"] = Changes, ["OnlyIfChanges"] = true, ["Sites"] = new JsonArray(ExampleSite.Name) }),
            },
        },
    }.ToJsonString());
}
