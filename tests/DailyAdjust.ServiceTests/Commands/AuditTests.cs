using System.Globalization;
using System.Text;
using DailyAdjust.ServiceTests.Controllers;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>Catch cups stored as measured by the real program, and what comes of them.</summary>
public sealed class AuditTests : IDisposable
{
    private const string Header = "where,cup,volume (mL),throat diameter (mm),run time (min),wind speed (m/s)\n";

    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Cups_are_stored_as_measured_and_every_other_byte_stays()
    {
        var site = ExampleSite.PutInto(_home);
        var old = Encoding.UTF8.GetString(File.ReadAllBytes(site.StationsFile));
        var run = Audit(Cups());
        Assert.True(run.ExitCode == 0, run.ToString());
        Assert.Contains("green 3", run.Output, StringComparison.Ordinal);
        Assert.Contains("Stored in", run.Output, StringComparison.Ordinal);
        Assert.Contains("Reclaimed water", run.Output, StringComparison.Ordinal);

        // 20 mL in a throat of 100 mm are 2.5465 mm in 15 min: 10.186 mm/h or 0.401 in/h; uniformity 15 / 20.
        var end = old.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        var expected = old
            .Replace("gauge,note" + end, "gauge,note,distribution uniformity (%)" + end, StringComparison.Ordinal)
            .Replace("0.52,catalogue,43,8000,1.0,,", "0.401,measured,43,8000,1.0,,,75", StringComparison.Ordinal);
        Assert.NotEqual(old, expected);
        Assert.Equal(Encoding.UTF8.GetBytes(expected), File.ReadAllBytes(site.StationsFile));

        var again = Audit(Cups());
        Assert.Contains("Nothing to store", again.Output, StringComparison.Ordinal);
        Assert.Equal(Encoding.UTF8.GetBytes(expected), File.ReadAllBytes(site.StationsFile));
        Assert.Equal(0, RunningProgram.Run("check", "--home", _home.Path).ExitCode);
        Assert.Empty(Directory.GetFiles(site.Path, ".*"));
    }

    [Fact]
    public void Everything_that_is_wrong_with_a_file_is_told_at_once_in_its_order()
    {
        ExampleSite.PutInto(_home);
        var run = Audit(Header.Replace("wind speed (m/s)", "wind speed", StringComparison.Ordinal) + "C1/3,1,20,100,15,\nC1/3,1,ten,,20,\nC1/77,3,20,,,\n");
        Assert.Equal(2, run.ExitCode);
        var told = run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(l => l.Contains(".csv:", StringComparison.Ordinal)).Select(l => l[(l.IndexOf(".csv:", StringComparison.Ordinal) + 5)..]).ToList();
        Assert.Equal(["1:6", "3:2", "3:3", "3:5", "4:1"], told.Select(l => string.Join(':', l.Split(':').Take(2))));
        Assert.Contains("4:1: there is no station \"C1/77\" in stations.csv. did you mean", told[^1], StringComparison.OrdinalIgnoreCase);
        Assert.Contains("Nothing was stored.", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_dry_run_shows_what_would_change_and_writes_nothing()
    {
        var site = ExampleSite.PutInto(_home);
        var old = File.ReadAllBytes(site.StationsFile);
        var run = Audit(Cups(), "--dry-run");
        Assert.True(run.ExitCode == 0, run.ToString());
        Assert.Contains("Would be stored", run.Output, StringComparison.Ordinal);
        Assert.Contains("line 4, C1/3: precipitation rate (in/h) 0.52 -> 0.401; rate known catalogue -> measured; distribution uniformity (%) (empty) -> 75", run.Output, StringComparison.Ordinal);
        Assert.Equal(old, File.ReadAllBytes(site.StationsFile));
    }

    [Fact]
    public void A_spreadsheets_file_keeps_mark_line_ends_semicolons_and_mode()
    {
        var site = ExampleSite.PutInto(_home);
        var text = "\uFEFF" + File.ReadAllText(site.StationsFile).ReplaceLineEndings("\n").Replace(",", ";", StringComparison.Ordinal).Replace("green 3;", "\"grün 3\";", StringComparison.Ordinal).Replace("\n", "\r\n", StringComparison.Ordinal);
        File.WriteAllBytes(site.StationsFile, Encoding.UTF8.GetBytes(text));
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(site.StationsFile, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead | UnixFileMode.GroupWrite);
        }

        var run = Audit(Cups());
        Assert.True(run.ExitCode == 0, run.ToString());
        var expected = text
            .Replace("gauge;note\r\n", "gauge;note;distribution uniformity (%)\r\n", StringComparison.Ordinal)
            .Replace("0.52;catalogue;43;8000;1.0;;\r\n", "0.401;measured;43;8000;1.0;;;75\r\n", StringComparison.Ordinal);
        Assert.Equal(Encoding.UTF8.GetBytes(expected), File.ReadAllBytes(site.StationsFile));
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead | UnixFileMode.GroupWrite, File.GetUnixFileMode(site.StationsFile));
        }
    }

    [Fact]
    public void A_file_in_Latin_1_stays_in_Latin_1()
    {
        var site = ExampleSite.PutInto(_home);
        var text = File.ReadAllText(site.StationsFile).Replace("green 3,", "grün 3,", StringComparison.Ordinal);
        File.WriteAllBytes(site.StationsFile, Encoding.Latin1.GetBytes(text));
        Assert.Equal(0, Audit(Cups()).ExitCode);
        var after = Encoding.Latin1.GetString(File.ReadAllBytes(site.StationsFile));
        Assert.Contains("C1,3,grün 3,greens,,25,,0.401,measured,", after, StringComparison.Ordinal);
    }

    [Fact]
    public void A_link_stays_a_link()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        var site = ExampleSite.PutInto(_home);
        var real = Path.Combine(_home.Path, "kept-elsewhere.csv");
        File.Move(site.StationsFile, real);
        File.CreateSymbolicLink(site.StationsFile, real);
        Assert.Equal(0, Audit(Cups()).ExitCode);
        Assert.Equal(real, new FileInfo(site.StationsFile).LinkTarget);
        Assert.Contains(",0.401,measured,", File.ReadAllText(real), StringComparison.Ordinal);
    }

    [Fact]
    public void A_bad_file_is_refused_whole_with_line_and_column()
    {
        var site = ExampleSite.PutInto(_home);
        var old = File.ReadAllBytes(site.StationsFile);
        var run = Audit(Cups().Replace("C1/3,7,", "C1/33,7,", StringComparison.Ordinal).Replace("C1/3,9,20,", "C1/3,9,\"2O\",", StringComparison.Ordinal));
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("cups.csv:8:1: there is no station \"C1/33\" in stations.csv. did you mean \"C1/3\"?", run.Error, StringComparison.Ordinal);
        Assert.Contains("cups.csv:10:3: \"2O\" is not a number.", run.Error, StringComparison.Ordinal);
        Assert.Contains("Nothing was stored.", run.Error, StringComparison.Ordinal);
        Assert.Empty(run.Output);
        Assert.Equal(old, File.ReadAllBytes(site.StationsFile));

        Assert.Equal(2, RunningProgram.Run("audit", "no-such-file.csv", "--home", _home.Path).ExitCode);
        File.AppendAllText(site.StationsFile, "C9,1,,greens\n");
        var bad = File.ReadAllBytes(site.StationsFile);
        var description = Audit(Cups());
        Assert.Equal(2, description.ExitCode);
        Assert.Contains("stations.csv:", description.Error, StringComparison.Ordinal);
        Assert.Equal(bad, File.ReadAllBytes(site.StationsFile));
    }

    [Fact]
    public void A_dry_quarter_is_shown_and_not_stored()
    {
        var site = ExampleSite.PutInto(_home);
        var old = File.ReadAllBytes(site.StationsFile);
        var run = Audit("where,depth (mm),run time (min)\nC1/3,0,20\nC1/3,4,20\nC1/3,4,20\nC1/3,4,20\n");
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("! green 3: the lowest quarter of the cups got nothing", run.Output, StringComparison.Ordinal);
        Assert.Contains("Nothing to store", run.Output, StringComparison.Ordinal);
        Assert.Equal(old, File.ReadAllBytes(site.StationsFile));
    }

    [Fact]
    public void Csv_and_json_carry_the_numbers_in_metric()
    {
        ExampleSite.PutInto(_home);
        var csv = Audit(Cups(), "--dry-run", "--format", "csv");
        var rows = csv.Output.Split('\n');
        Assert.Equal("controller,station,name,area,cups,run_min,mean_mm,lowest_quarter_mm,rate_mm_h,rate_before_mm_h,rate_before_known,uniformity_percent,uniformity_class,multiplier,wind_m_s,remarks", rows[0]);
        Assert.Equal("C1,3,green 3,greens,20,15,2.5465,1.9099,10.1859,13.2080,catalogue,75.00,expected,1.1765,1.00,", rows[1]);
        Assert.Contains("Would be stored", csv.Error, StringComparison.Ordinal);
        var json = Audit(Cups(), "--dry-run", "--format", "json");
        Assert.Contains("\"multiplier\": 1.1765", json.Output, StringComparison.Ordinal);
        Assert.Equal(json.Output, Audit(Cups(), "--dry-run", "--format", "json").Output);
    }

    /// <summary>
    /// A zone of the small course needs 10 mm: an hour at 10 mm/h and efficiency 1, 100 %. Measured are 8 mm/h at 75 % uniformity: 8 × 0.85 = 6.8 mm an hour,
    /// and 10 / 6.8 = 147 %.
    /// </summary>
    [Fact]
    public void The_next_morning_counts_with_what_was_measured()
    {
        using var course = new SmallCourse(
            SmallCourse.Box("C1", "{ applies: program, min: 0 %, max: 300 %, step: 1 % }", "", ("P1", "\"22:00\"")),
            "controller,station,area,minutes P1,precipitation rate (mm/h),rate known\nC1,1,greens,60,10,assumed");
        course.Morning();
        Assert.Equal(100, ExactPercent(course), 1e-3);
        var file = Path.Combine(_home.Path, "cups.csv");
        File.WriteAllText(file, "where,depth (mm),run time (min),wind speed (m/s)\n" + string.Concat(Enumerable.Range(0, 20).Select(i => string.Create(CultureInfo.InvariantCulture, $"C1/1,{(i < 5 ? 3.0 : 13.0 / 3)},30,1\n"))));
        var run = course.Run("audit", file);
        Assert.True(run.ExitCode == 0, run.ToString());
        Assert.DoesNotContain("rate is assumed", course.Run("check").Output, StringComparison.Ordinal);

        var morning = course.Run("morning", "--date", SmallCourse.Monday, "--from", SmallCourse.Monday);
        Assert.True(morning.ExitCode == 0, morning.ToString());
        Assert.Equal(100 / 0.68, ExactPercent(course), 1e-3);
    }

    /// <summary>Of the only program, on Monday.</summary>
    private static double ExactPercent(SmallCourse course)
    {
        var rows = course.Run("advice", "--date", SmallCourse.Monday, "--format", "csv").Output.Split('\n');
        return double.Parse(rows[1].Split(',')[Array.IndexOf(rows[0].Split(','), "exact_percent")], CultureInfo.InvariantCulture);
    }

    private ProgramResult Audit(string cups, params string[] more)
    {
        var file = Path.Combine(_home.Path, "cups.csv");
        File.WriteAllText(file, cups);
        return RunningProgram.Run(["audit", file, "--home", _home.Path, .. more]);
    }

    /// <summary>20 cups of green 3: five of 15 mL, and fifteen that bring the mean to 20 mL.</summary>
    private static string Cups() => Header + string.Concat(Enumerable.Range(1, 20).Select(i =>
        string.Create(CultureInfo.InvariantCulture, $"C1/3,{i},{(i is > 8 and < 12 ? 20 : i <= 5 ? 15 : 265.0 / 12)}") + (i == 1 ? ",100,15,1\n" : ",,,\n")));
}
