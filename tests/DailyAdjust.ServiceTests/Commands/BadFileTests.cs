using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>What somebody may drop into an inbox, through the real program: a clear message, nothing lost, the others go on.</summary>
public sealed class BadFileTests : IDisposable
{
    private readonly TestHome _home = new();
    private readonly SiteFolder _site;

    public BadFileTests()
    {
        _site = ExampleSite.PutInto(_home);
        File.Copy(ExampleSite.Weather, Path.Combine(_site.Inbox, "yard-zz-good.csv"));
    }

    public void Dispose() => _home.Dispose();

    [Fact]
    public void An_empty_file_is_refused() => Assert.Contains("empty", Refused("yard-empty.csv", []), StringComparison.Ordinal);

    [Fact]
    public void A_binary_file_is_refused() =>
        Assert.Contains("yard-binary.csv:1:1", Refused("yard-binary.csv", [.. Enumerable.Range(0, 4000).Select(i => (byte)(i * 7))]), StringComparison.Ordinal);

    [Fact]
    public void A_name_that_fits_nothing_is_refused_with_the_patterns_that_would() =>
        Assert.Contains("yard-*.csv (station yard)", Refused("holiday.csv", "a,b\n1,2\n"u8.ToArray()), StringComparison.Ordinal);

    [Fact]
    public void A_date_column_that_does_not_parse_is_told_row_by_row()
    {
        var text = "Time,Temp (°F),RH (%),Wind (mph),Solar (W/m²),Rain (in)\n01.06.2026 1:00,67,79,5,0,0\n";
        var why = Refused("yard-dates.csv", System.Text.Encoding.UTF8.GetBytes(text), alsoWhenTaken: true);
        Assert.Contains("yard-dates.csv:2:1", why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_of_300_MB_is_refused_without_being_read()
    {
        using (var stream = File.Create(Path.Combine(_site.Inbox, "yard-huge.csv")))
        {
            stream.SetLength(300_000_000);
        }

        Assert.Contains("300 MB", Why("yard-huge.csv", alsoWhenTaken: false), StringComparison.Ordinal);
    }

    [Fact]
    public void A_link_out_of_the_inbox_is_refused_and_its_target_stays_unread()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need rights on Windows.");
        var target = Path.Combine(_home.Path, "elsewhere.csv");
        File.Copy(ExampleSite.Weather, target);
        File.CreateSymbolicLink(Path.Combine(_site.Inbox, "yard-link.csv"), target);
        Assert.Contains("link", Why("yard-link.csv", alsoWhenTaken: false), StringComparison.Ordinal);
        Assert.True(File.Exists(target));
    }

    [Fact]
    public void A_file_cut_in_the_middle_of_a_line_keeps_its_whole_lines()
    {
        var text = File.ReadAllText(ExampleSite.Weather);
        var lines = text.Split('\n');
        var cut = string.Join('\n', lines.Take(30)) + "\n" + lines[30][..20];
        File.WriteAllText(Path.Combine(_site.Inbox, "yard-cut.csv"), cut);
        File.Delete(Path.Combine(_site.Inbox, "yard-zz-good.csv"));
        var result = Run("morning", "--date", "2026-06-10");
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("29 rows read, 0 set aside, 1 refused", result.Error, StringComparison.Ordinal);
        Assert.Contains("yard-cut.csv:31:", File.ReadAllText(Path.Combine(_site.Taken, "yard-cut.csv.why.txt")), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_files_of_one_name_are_both_taken_and_kept()
    {
        var name = "yard-1.csv";
        File.WriteAllText(Path.Combine(_site.Inbox, name), ExampleSite.WeatherUntil("2026-06-03 00:00"));
        Run("morning", "--date", "2026-06-03");
        File.WriteAllText(Path.Combine(_site.Inbox, name), ExampleSite.WeatherUntil("2026-06-04 00:00"));
        Run("morning", "--date", "2026-06-04");
        Assert.True(File.Exists(Path.Combine(_site.Taken, "yard-1.csv")));
        Assert.True(File.Exists(Path.Combine(_site.Taken, "yard-1.2.csv")));
    }

    [Fact]
    public void A_bad_row_of_the_logbook_is_refused_with_its_place_and_the_others_count()
    {
        File.WriteAllText(Path.Combine(_site.Inbox, "logbook.csv"), "time,kind,where,value,unit,until,by,note\n2026-06-05 10:30,setting,C1/P2,90,%,,,\n2026-06-05 10:45,settting,C1/P1,90,%,,,\n");
        var result = Run("morning", "--date", "2026-06-10");
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("1 rows read, 0 set aside, 1 refused", result.Error, StringComparison.Ordinal);
        Assert.Contains("logbook.csv:3:2", File.ReadAllText(Path.Combine(_site.Taken, "logbook.csv.why.txt")), StringComparison.Ordinal);
    }

    [Fact]
    public void Ingest_of_a_file_that_cannot_be_used_ends_with_2_and_leaves_the_reason()
    {
        var file = Path.Combine(_home.Path, "holiday.csv");
        File.WriteAllText(file, "a,b\n1,2\n");
        var result = Run("ingest", file);
        Assert.Equal(2, result.ExitCode);
        Assert.Contains("yard-*.csv", result.Error, StringComparison.Ordinal);
        Assert.Contains("0 rows read, 0 set aside, 0 refused", result.Output, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(_site.Refused, "holiday.csv.why.txt")));
        Assert.True(File.Exists(file));
    }

    [Fact]
    public void Ingest_of_another_file_of_that_name_keeps_both()
    {
        var file = Path.Combine(_home.Path, "holiday.csv");
        foreach (var text in (string[])["a,b\n1,2\n", "a,b\n1,2\n", "c,d\n3,4\n"])
        {
            File.WriteAllText(file, text);
            Run("ingest", file);
        }

        Assert.Equal("a,b\n1,2\n", File.ReadAllText(Path.Combine(_site.Refused, "holiday.csv")));
        Assert.Equal("c,d\n3,4\n", File.ReadAllText(Path.Combine(_site.Refused, "holiday.2.csv")));
        Assert.Equal(4, Directory.GetFiles(_site.Refused).Length);
    }

    private string Refused(string name, byte[] bytes, bool alsoWhenTaken = false)
    {
        File.WriteAllBytes(Path.Combine(_site.Inbox, name), bytes);
        return Why(name, alsoWhenTaken);
    }

    /// <summary>Runs a morning; the bad file has its reason beside it, the good one is taken, and the sheet names the bad one.</summary>
    private string Why(string name, bool alsoWhenTaken)
    {
        var result = Run("morning", "--date", "2026-06-10");
        Assert.True(result.ExitCode == 0, result.ToString());
        Assert.True(File.Exists(Path.Combine(_site.Taken, "yard-zz-good.csv")));
        Assert.Contains(name, File.ReadAllText(Path.Combine(_site.ReportFolder(new DateOnly(2026, 6, 10)), "report-full.txt")), StringComparison.Ordinal);
        var folder = alsoWhenTaken && !File.Exists(Path.Combine(_site.Refused, name + ".why.txt")) ? _site.Taken : _site.Refused;
        return File.ReadAllText(Path.Combine(folder, name + ".why.txt"));
    }

    private ProgramResult Run(params string[] arguments) => RunningProgram.Run([arguments[0], "--home", _home.Path, .. arguments[1..]]);
}
