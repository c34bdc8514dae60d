using System.Globalization;
using DailyAdjust.Service.Home;
using DailyAdjust.Tests.Courses;
using Microsoft.Data.Sqlite;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>A backfill whose process is killed on the way: nothing is half there, and the same command goes on.</summary>
[Trait("Promise", "1")]
public sealed class KilledBackfillTests : IDisposable
{
    private const int Rows = 150_000;

    private static readonly CourseSize Course = CourseSize.Small(seed: 600, new DateOnly(2026, 6, 9));

    private readonly TestHome _home = new();
    private readonly string _file;

    public KilledBackfillTests()
    {
        // Seventeen years of an invented course, all of which lie before its balance.
        _file = Path.Combine(_home.Path, "yard-years.csv");
        File.WriteAllText(_file, CourseWeather.Hourly(Course.From.AddDays(-Rows / 24), Course.From.AddDays(-1), Course.Seed));
    }

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Killed_at_any_moment_the_ledger_is_whole_and_the_same_command_takes_the_file_once()
    {
        var undisturbed = Site("calm");
        var whole = Run("ingest", _file, "--site", "calm");
        Assert.Contains($"{Rows} rows read, 0 set aside, 0 refused", whole.Output, StringComparison.Ordinal);

        var killed = Site("killed");
        var onTheWay = 0;
        foreach (var milliseconds in new[] { 150, 350, 550, 750, 950 })
        {
            using var process = RunningProgram.Start(new ProgramStart("ingest", _file, "--site", "killed", "--home", _home.Path));
            process.StandardInput.Close();
            onTheWay += process.WaitForExit(milliseconds) ? 0 : 1;
            process.Kill();
            process.WaitForExit();
            Assert.Equal("ok", Scalar(killed, "PRAGMA integrity_check") ?? "ok");
            Assert.True(Scalar(killed, "SELECT count(*) FROM file") is null or "0" or "1", "the file is there more than once");
        }

        Assert.True(onTheWay > 0, "the program was never killed on its way: the file is too small for this machine");
        var again = Run("ingest", _file, "--site", "killed");
        Assert.True(again.ExitCode == 0, again.ToString());
        Assert.Equal("1", Scalar(killed, "SELECT count(*) FROM file"));
        foreach (var count in new[] { "SELECT count(*) FROM file_chunk", "SELECT count(*) FROM reading_day", "SELECT sum(length(body)) FROM reading_day" })
        {
            Assert.Equal(Scalar(undisturbed, count), Scalar(killed, count));
        }
    }

    private SiteFolder Site(string name)
    {
        var site = _home.EmptySite(name);
        var files = CourseFiles.Of(Course);
        File.WriteAllText(site.SiteFile, files["site.yaml"]);
        File.WriteAllText(site.StationsFile, files["stations.csv"]);
        return site;
    }

    /// <summary>Null = there is no ledger yet, or no such table in it.</summary>
    private static string? Scalar(SiteFolder site, string sql)
    {
        if (!File.Exists(site.LedgerFile))
        {
            return null;
        }

        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = site.LedgerFile, Pooling = false }.ToString());
        connection.Open();
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // Fixed texts of this class.
        command.CommandText = sql;
#pragma warning restore CA2100
        try
        {
            return Convert.ToString(command.ExecuteScalar(), CultureInfo.InvariantCulture);
        }
        catch (SqliteException missing) when (missing.Message.Contains("no such table", StringComparison.Ordinal))
        {
            return null;
        }
    }

    private ProgramResult Run(params string[] arguments) => RunningProgram.Run([.. arguments, "--home", _home.Path]);
}
