using System.Text.Json;
using DailyAdjust.ServiceTests.Fallback;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>`morning --at`: a later look of a date by hand, on the example site with sheets at 05:00 and 16:00.</summary>
public sealed class MorningAtTests : IDisposable
{
    private const string Date = "2026-06-10";

    private readonly FallbackHome _home = new FallbackHome().With(("at: \"05:00\"", "at: [\"05:00\", \"16:00\"]"));

    public void Dispose() => _home.Dispose();

    [Fact]
    public void A_later_look_of_a_past_date_is_the_next_issue_of_that_date_and_knows_what_its_hour_knew()
    {
        _home.Drop("yard-2026.csv", ExampleSite.WeatherUntil(Date + " 23:00"));
        var first = _home.Morning(Date).Json;
        Assert.Equal((1, "2026-06-10T10:00:00Z", false), Look(first));

        Assert.Contains("sheet 2026-06-10/2", _home.Run("morning", "--date", Date, "--at", "16:00"), StringComparison.Ordinal);
        var later = Sheet();
        Assert.Equal((2, "2026-06-10T21:00:00Z", true), Look(later));
        Assert.Equal("2026-06-10T16:00", later.GetProperty("secondLook").GetProperty("etoThrough").GetString()); // readings to 23:00 are there
        Assert.True(later.GetProperty("secondLook").GetProperty("afterRound").GetBoolean());
        Assert.Contains("replaces issue 1", File.ReadAllText(ReportText), StringComparison.OrdinalIgnoreCase);

        // Back to the first look: its advice again, as the date's newest issue; an answer to the round is to that one.
        _home.Run("morning", "--date", Date, "--at", "5:00");
        var again = Sheet();
        Assert.Equal((3, "2026-06-10T10:00:00Z", false), Look(again));
        Assert.Equal(first.GetProperty("programs").GetRawText(), again.GetProperty("programs").GetRawText());
        Assert.Contains("sheet 2026-06-10/3", _home.Run("explain", "C1/P2", "--date", Date), StringComparison.Ordinal);
    }

    /// <summary>Nothing is issued by asking, and what a look would say is what it says once it is made.</summary>
    [Fact]
    public void Advice_and_explain_reckon_a_later_look_before_it_is_made_and_find_it_afterwards()
    {
        _home.Drop("yard-2026.csv", ExampleSite.WeatherUntil(Date + " 23:00"));
        var first = _home.Morning(Date).Json;
        string[] advice = ["--date", Date, "--at", "16:00", "--format", "csv"];
        var would = _home.Ran("advice", advice);
        Assert.Contains("computed as of 2026-06-10 16:00", would.Error, StringComparison.Ordinal);
        var explained = _home.Run("explain", "C1/P2", "--date", Date, "--at", "16:00");
        Assert.Contains("not issued, as of 2026-06-10 16:00", explained, StringComparison.Ordinal);
        Assert.Contains("measured from 00:00 to 16:00", explained, StringComparison.Ordinal);

        // Without a time they mean the newest issue, with the first one's time that one.
        Assert.Contains("sheet 2026-06-10/1, as of 2026-06-10 05:00", _home.Run("explain", "C1/P2", "--date", Date), StringComparison.Ordinal);
        var early = _home.Run("advice", "--date", Date, "--format", "csv");
        Assert.NotEqual(early, would.Output);
        Assert.Contains("sheet 2026-06-10/2", _home.Run("morning", "--date", Date, "--at", "16:00"), StringComparison.Ordinal);
        var made = _home.Ran("advice", advice);
        Assert.Equal((would.Output, ""), (made.Output, made.Error));
        Assert.Contains("sheet 2026-06-10/2, as of 2026-06-10 16:00", _home.Run("explain", "C1/P2", "--date", Date, "--at", "16:00"), StringComparison.Ordinal);
        Assert.Equal(early, _home.Run("advice", "--date", Date, "--at", "05:00", "--format", "csv"));
        Assert.Contains("sheet 2026-06-10/1, as of 2026-06-10 05:00", _home.Run("explain", "C1/P2", "--date", Date, "--at", "05:00"), StringComparison.Ordinal);
        Assert.Equal((1, "2026-06-10T10:00:00Z", false), Look(first));
    }

    [Fact]
    public void Advice_and_explain_refuse_a_time_that_goes_with_nothing()
    {
        ProgramResult Run(params string[] arguments) => RunningProgram.Run([.. arguments, "--home", HomePath]);

        _home.Morning(Date);
        Assert.Contains("--at 17:00: no sheet of this site is made at that time.", Run("advice", "--date", Date, "--at", "17:00").Error, StringComparison.Ordinal);
        Assert.Contains("--at 17:00: no sheet of this site is made at that time.", Run("explain", "C1/P2", "--date", Date, "--at", "17:00").Error, StringComparison.Ordinal);
        Assert.Contains("--at is about one morning.", Run("advice", "--from", "2026-06-09", "--to", Date, "--at", "16:00").Error, StringComparison.Ordinal);
        var station = Run("explain", "C1/1", "--date", Date, "--at", "16:00");
        Assert.Equal(2, station.ExitCode);
        Assert.Contains("--at goes with a program's advice, and C1/1 is a station", station.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_time_at_which_the_site_makes_no_sheet_is_refused_with_the_times_that_there_are()
    {
        var result = Refused("--date", Date, "--at", "17:00");
        Assert.Contains("--at 17:00: no sheet of this site is made at that time.", result.Error, StringComparison.Ordinal);
        Assert.Contains("05:00, 16:00", result.Error, StringComparison.Ordinal);
        Assert.Contains("--at noon: not a time of day. Write it as 16:00.", Refused("--date", Date, "--at", "noon").Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.GetDirectoryName(ReportText)));
    }

    [Fact]
    public void Without_a_date_it_is_todays_and_never_one_to_come()
    {
        _home.Drop("yard-2026.csv", ExampleSite.WeatherUntil(Date + " 12:00"));
        ProgramResult Today(int hour, string at) => InProcess.Run(
            new FakeTimeProvider(new(2026, 6, 10, hour + 5, 0, 0, TimeSpan.Zero)), ["morning", "--home", HomePath, "--at", at]);

        var tooEarly = Today(12, "16:00");
        Assert.Equal(2, tooEarly.ExitCode);
        Assert.Contains("--at 16:00: that time of 2026-06-10 is still to come.", tooEarly.Error, StringComparison.Ordinal);

        var result = Today(17, "16:00");
        Assert.True(result.ExitCode == 0, result.ToString());
        Assert.Equal((1, "2026-06-10T21:00:00Z", true), Look(Sheet()));
    }

    private string HomePath => Path.GetDirectoryName(Path.GetDirectoryName(_home.Site.Path))!;

    private string ReportText => Path.Combine(_home.Site.Path, "reports", Date, "report-full.txt");

    private ProgramResult Refused(params string[] arguments)
    {
        var result = RunningProgram.Run(["morning", "--home", HomePath, .. arguments]);
        Assert.Equal(2, result.ExitCode);
        return result;
    }

    private JsonElement Sheet() => JsonDocument.Parse(File.ReadAllText(Path.Combine(_home.Site.Path, "reports", Date, "advice.json"))).RootElement;

    private static (int Issue, string AsOf, bool IsLater) Look(JsonElement sheet) =>
        (sheet.GetProperty("issue").GetInt32(), sheet.GetProperty("asOf").GetString()!, sheet.TryGetProperty("secondLook", out _));
}
