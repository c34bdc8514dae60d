using DailyAdjust.Service.Home;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>`doctor`: nothing wrong is well, and each thing that goes wrong is one line of its own, with an exit code for monitors.</summary>
[Trait("Promise", "9")]
public sealed class DoctorTests : IDisposable
{
    /// <summary>05:30 on 18 June 2026 in Chicago: half an hour after the sheet, five hours after the example's last reading.</summary>
    private static readonly DateTimeOffset AfterSheet = new(2026, 6, 18, 10, 30, 0, TimeSpan.Zero);

    private readonly TestHome _home = new();
    private readonly SiteFolder _site;

    public DoctorTests()
    {
        _site = ExampleSite.TakenIn(_home);
        Directory.CreateDirectory(_site.Inbox);
    }

    public void Dispose() => _home.Dispose();

    [Fact]
    public void After_a_good_morning_every_line_is_well_and_nothing_is_left_behind()
    {
        At(AfterSheet, "morning");
        var before = Files();
        var result = Doctor(AfterSheet);
        Assert.Equal(0, result.ExitCode);
        Assert.All(Lines(result), line => Assert.StartsWith("well ", line, StringComparison.Ordinal));
        string[] subjects = ["rights", "disk", "time zones", "mornings", "description", "inbox", "ledger", "clock", "weather", "sheet"];
        Assert.All(subjects, subject => Assert.Contains(Lines(result), line => line.Contains($" {subject} ", StringComparison.Ordinal)));
        Assert.Equal(before, Files());
        Assert.Empty(Doctor(AfterSheet, "--quiet").Output);
    }

    [Fact]
    public void A_sheet_that_is_late_and_mornings_slept_over_are_alarms()
    {
        Alarms(AfterSheet, "sheet", "min late");
        At(AfterSheet, "morning");
        Alarms(AfterSheet.AddDays(4), "sheet", "min late");
        Alarms(AfterSheet.AddDays(4).AddHours(-1), "sheet", "slept over");
        Alarms(AfterSheet.AddDays(4), "mornings", "some site has had no sheet");
    }

    [Fact]
    public void Old_weather_is_looked_at_before_it_stops_advice()
    {
        At(AfterSheet, "morning");
        Assert.Contains(Lines(Doctor(AfterSheet.AddHours(22))), line => line.StartsWith("look ", StringComparison.Ordinal) && line.Contains(" weather ", StringComparison.Ordinal));
        Alarms(AfterSheet.AddDays(3), "weather", "sheets give none until files come in again");
    }

    [Fact]
    public void A_description_with_errors_a_missing_inbox_and_refused_files_are_told()
    {
        At(AfterSheet, "morning");
        File.WriteAllText(Path.Combine(_site.Inbox, "holiday.csv"), "a,b\n1,2\n");
        File.SetLastWriteTimeUtc(Path.Combine(_site.Inbox, "holiday.csv"), AfterSheet.UtcDateTime.AddHours(-1));
        Assert.Contains("1 file waited", Doctor(AfterSheet).Output, StringComparison.Ordinal);
        At(AfterSheet, "morning");
        File.SetLastWriteTimeUtc(Path.Combine(_site.Refused, "holiday.csv.why.txt"), AfterSheet.UtcDateTime);
        Assert.Contains("inbox/refused/holiday.csv.why.txt says why", Doctor(AfterSheet).Output, StringComparison.Ordinal);
        File.AppendAllText(_site.SiteFile, "\nnonsense: 1\n");
        Alarms(AfterSheet, "description", "nonsense");
        Directory.Delete(_site.Inbox, recursive: true);
        Alarms(AfterSheet, "inbox", "is gone");
    }

    [Fact]
    public void A_clock_that_was_set_back_is_an_alarm()
    {
        At(AfterSheet, "morning");
        Alarms(AfterSheet.AddDays(-2), "clock", "set the clock");
    }

    [Fact]
    public void A_damaged_ledger_is_an_alarm_and_thorough_finds_a_changed_file_in_it()
    {
        At(AfterSheet, "morning");
        using (var connection = new SqliteConnection($"Data Source={_site.LedgerFile};Pooling=False"))
        {
            connection.Open();
            using var change = connection.CreateCommand();
            change.CommandText = "DROP TRIGGER file_chunk_update; UPDATE file_chunk SET body = (SELECT body FROM file_chunk ORDER BY seq DESC LIMIT 1) WHERE seq = (SELECT min(seq) FROM file_chunk)";
            change.ExecuteNonQuery();
        }

        Assert.Equal(0, Doctor(AfterSheet).ExitCode);
        Assert.Equal(1, Doctor(AfterSheet, "--thorough").ExitCode);
        Assert.Contains(" ledger ", Lines(Doctor(AfterSheet, "--thorough", "--quiet"))[0], StringComparison.Ordinal);
        File.WriteAllText(_site.LedgerFile, new string('x', 8192));
        Alarms(AfterSheet, "ledger", "is not a ledger");
    }

    [Fact]
    public void A_password_that_cannot_be_had_is_an_alarm_and_never_printed()
    {
        At(AfterSheet, "morning");
        var secret = Path.Combine(_home.Path, "secret");
        File.WriteAllText(secret, "chalk and cheese\n");
        File.WriteAllText(_home.Home.SettingsFile, $$"""
            { "DailyAdjust": { "Mail": { "Server": "127.0.0.1", "Security": "none", "User": "course", "PasswordFile": "{{secret}}", "From": "a@example.com", "Recipients": [ { "To": "b@example.com" } ] } } }
            """);
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Rights are told by their mode.");
        Mode("644", secret);
        Alarms(AfterSheet, "mail", "chmod 600");
        Mode("600", secret);
        var well = Doctor(AfterSheet);
        Assert.Equal(0, well.ExitCode);
        Assert.DoesNotContain("chalk", well.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Folders_that_the_user_may_not_write_are_an_alarm()
    {
        Tool.Need("setpriv");
        Mode("755", _home.Path);
        var result = AsNobody("doctor", "--home", _home.Path, "--quiet");
        Assert.Equal(1, result.ExitCode);
        Assert.Contains(Lines(result), line => line.StartsWith("alarm ", StringComparison.Ordinal) && line.Contains(" rights ", StringComparison.Ordinal));
    }

    private static void Mode(string mode, string path) => Assert.Equal(0, Tool.Run("/bin/chmod", mode, path).ExitCode);

    private static ProgramResult AsNobody(params string[] arguments) => Tool.Run("/usr/bin/setpriv", ["--reuid=65534", "--regid=65534", "--clear-groups", RunningProgram.Path, .. arguments]);

    private void Alarms(DateTimeOffset now, string subject, params string[] words)
    {
        var result = Doctor(now);
        Assert.Equal(1, result.ExitCode);
        var line = Assert.Single(Lines(result), line => line.StartsWith("alarm ", StringComparison.Ordinal) && line.Contains($" {subject} ", StringComparison.Ordinal));
        Assert.True(words.Any(word => line.Contains(word, StringComparison.Ordinal)), line);
        Tried.Held(9, "alarms of the doctor", 1);
    }

    private ProgramResult Doctor(DateTimeOffset now, params string[] arguments) => At(now, ["doctor", .. arguments]);

    private ProgramResult At(DateTimeOffset now, params string[] arguments) =>
        InProcess.Run(new FakeTimeProvider(now), [arguments[0], "--home", _home.Path, .. arguments[1..]]);

    private static string[] Lines(ProgramResult result) => result.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);

    private string[] Files() => [.. Directory.GetFileSystemEntries(_home.Path, "*", SearchOption.AllDirectories).Where(f => !f.EndsWith("-shm", StringComparison.Ordinal) && !f.EndsWith("-wal", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];
}
