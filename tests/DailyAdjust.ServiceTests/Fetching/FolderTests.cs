using DailyAdjust.Ledger;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace DailyAdjust.ServiceTests.Fetching;

/// <summary>A logger's own folder: read in place, never touched.</summary>
[Trait("Promise", "4")]
public sealed class FolderTests : IDisposable
{
    /// <summary>04:52 on 10 June 2026 in Chicago.</summary>
    private static readonly DateTimeOffset Start = new(2026, 6, 10, 9, 52, 0, TimeSpan.Zero);

    private readonly TestHome _home = new();
    private readonly FakeTimeProvider _time = new(Start);
    private readonly SiteFolder _site;
    private readonly string _folder;
    private readonly string _file;
    private readonly SiteRunner _runner;

    public FolderTests()
    {
        _folder = Path.Combine(_home.Path, "logger");
        _file = Path.Combine(_folder, "yard-2026.csv");
        Directory.CreateDirectory(_folder);
        _site = ExampleSite.PutInto(_home);
        File.WriteAllText(_site.SiteFile, File.ReadAllText(_site.SiteFile).Replace("    - id: yard\n", $"    - id: yard\n      folder: \"{_folder}\"\n", StringComparison.Ordinal));
        _runner = new SiteRunner(_site, new ServiceOptions(), _time, NullLogger.Instance);
    }

    public void Dispose()
    {
        _runner.Dispose();
        if (!OperatingSystem.IsWindows() && Directory.Exists(_folder))
        {
            File.SetUnixFileMode(_folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }

        _home.Dispose();
    }

    [Fact]
    public async Task A_file_that_grows_is_read_anew_only_when_it_has_changed_and_lies_still()
    {
        Write("2026-06-08 04:00");
        await LookAsync();
        await LookAsync();
        Assert.Equal(1, Stored());
        await LookAsync();
        Assert.Equal(1, Stored());

        // Still growing at one look, the same at two.
        Write("2026-06-09 04:00", age: TimeSpan.Zero);
        await LookAsync();
        Write("2026-06-10 03:00", age: TimeSpan.Zero);
        await LookAsync();
        Assert.Equal(1, Stored());
        await LookAsync();
        Assert.Equal(2, Stored());
        Assert.Equal(ExampleSite.WeatherUntil("2026-06-10 03:00"), File.ReadAllText(_file));
        Assert.Equal([_file], Directory.GetFileSystemEntries(_folder));
    }

    [Fact]
    public async Task A_file_that_is_never_at_rest_is_read_all_the_same()
    {
        await LookAsync();
        for (var i = 0; i < 13; i++)
        {
            Write(FormattableString.Invariant($"2026-06-09 {i:00}:00"), age: TimeSpan.Zero);
            await LookAsync();
        }

        Assert.InRange(Stored(), 1, 2);
    }

    [Fact]
    public async Task Another_process_reads_nothing_twice()
    {
        Write("2026-06-09 04:00");
        await LookAsync();
        await LookAsync();
        using var ledger = OpenSite.Open(_site, LedgerMode.Read);
        var look = new SiteFolders(_site, new ServiceOptions(), _time, NullLogger.Instance);
        Assert.Empty(look.Look(ledger));

        // The same length, written to later: only reading it tells.
        File.SetLastWriteTimeUtc(_file, _time.GetUtcNow().UtcDateTime.AddMinutes(5));
        _time.Advance(TimeSpan.FromMinutes(10));
        Assert.Equal("yard-2026.csv", Assert.Single(Assert.Single(look.Look(ledger)).Files).Name);
    }

    [Fact]
    public async Task A_folder_that_vanishes_stands_on_the_sheet_until_it_is_back()
    {
        Write("2026-06-10 03:00");
        var away = _folder + "-unmounted";
        Directory.Move(_folder, away);
        await LookAsync();
        await LookAsync();
        Assert.Contains($"The folder {_folder} of station yard is not there: nothing new comes from it.", Sheet(), StringComparison.Ordinal);
        Directory.CreateDirectory(_folder);
        Assert.Contains("holds no file yard-*.csv", InProcess.Run("morning", "--home", _home.Path, "--date", "2026-06-10").Error, StringComparison.Ordinal);
        Directory.Delete(_folder);
        Directory.Move(away, _folder);
        await LookAsync();
        Assert.Equal(1, Stored());
        var again = InProcess.Run("morning", "--home", _home.Path, "--date", "2026-06-10");
        Assert.True(again.ExitCode == 0, again.ToString());
        Assert.DoesNotContain(_folder, Sheet(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_morning_command_reads_a_folder_that_may_only_be_read()
    {
        Write("2026-06-10 03:00");
        var written = File.GetLastWriteTimeUtc(_file);
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(_file, UnixFileMode.UserRead);
            File.SetUnixFileMode(_folder, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        }

        var result = InProcess.Run("morning", "--home", _home.Path, "--date", "2026-06-10");
        Assert.True(result.ExitCode == 0, result.ToString());
        Assert.Equal("", result.Error);
        Assert.Equal(1, Stored());
        Assert.Equal(written, File.GetLastWriteTimeUtc(_file));
        Assert.Empty(Directory.GetFiles(_site.Inbox));
    }

    /// <summary>Nobody reads the file again after a crash: what the sheet has to say of it is kept with it.</summary>
    [Fact]
    public async Task What_could_not_be_read_of_a_file_waits_in_the_ledger_for_the_sheet()
    {
        await LookAsync();
        File.WriteAllText(_file, ExampleSite.WeatherUntil("2026-06-10 03:00") + "2026-06-10 04:00,warm,,,,\n");
        Age("yard-2026.csv");
        using (var open = OpenSite.Open(_site, LedgerMode.Write))
        {
            var look = new SiteFolders(_site, new ServiceOptions(), _time, NullLogger.Instance);
            look.Take(open, look.Look(open), CancellationToken.None);
        }

        using var after = OpenSite.Open(_site, LedgerMode.Read);
        Assert.Contains("inbox/taken/yard-2026.csv.why.txt lists them.", Assert.Single(after.Ledger.Notices.Waiting), StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(_site.Taken, "yard-2026.csv.why.txt")));
    }

    [Fact]
    public async Task What_is_no_weather_of_this_station_is_not_taken()
    {
        Write("2026-06-09 04:00");
        File.WriteAllText(Path.Combine(_folder, "notes.txt"), "the logger's own");
        File.WriteAllText(Path.Combine(_folder, "yard-broken.csv"), "a,b\n1,2\n");
        File.WriteAllText(Path.Combine(_folder, "yard-log.csv"), "time,kind,where,value,unit,until,by,note\n2026-06-09 05:25,off,C1/P2,,,,,\n");
        Age("yard-broken.csv");
        Age("yard-log.csv");
        if (!OperatingSystem.IsWindows())
        {
            File.CreateSymbolicLink(Path.Combine(_folder, "yard-link.csv"), ExampleSite.Weather);
        }

        await LookAsync();
        await LookAsync();
        Assert.Equal(1, Stored());
        Assert.True(File.Exists(Path.Combine(_site.Refused, "yard-broken.csv.why.txt")));
        using (var open = OpenSite.Open(_site, LedgerMode.Read))
        {
            Assert.Empty(open.Ledger.Logbook.Effective());
        }

        Assert.True(File.Exists(Path.Combine(_folder, "yard-broken.csv")));
        Assert.Contains("could not be used", Sheet(), StringComparison.Ordinal);
    }

    private async Task LookAsync()
    {
        await _runner.RunAsync(CancellationToken.None);
        _time.Advance(TimeSpan.FromSeconds(30));
    }

    private void Write(string until, TimeSpan? age = null)
    {
        File.WriteAllText(_file, ExampleSite.WeatherUntil(until));
        File.SetLastWriteTimeUtc(_file, _time.GetUtcNow().UtcDateTime - (age ?? TimeSpan.FromHours(1)));
    }

    private void Age(string name) => File.SetLastWriteTimeUtc(Path.Combine(_folder, name), _time.GetUtcNow().UtcDateTime.AddHours(-1));

    private int Stored()
    {
        using var open = OpenSite.Open(_site, LedgerMode.Read);
        return open.Ledger.Files.List("yard").Count;
    }

    private string Sheet() => string.Join(' ', File.ReadAllText(Path.Combine(_site.ReportFolder(new DateOnly(2026, 6, 10)), "report-full.txt"))
        .Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
