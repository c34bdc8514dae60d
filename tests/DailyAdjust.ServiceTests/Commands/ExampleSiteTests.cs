using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>The example site end to end through the real program, against what an independent program expects of it.</summary>
public sealed class ExampleSiteTests : IDisposable
{
    private const double DepthToleranceMm = 0.02;
    private const double PercentTolerance = 0.1;

    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Its_files_are_taken_in_whole()
    {
        ExampleSite.PutInto(_home);
        var result = Run("ingest", ExampleSite.Weather, ExampleSite.Logbook);
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("408 rows read, 0 set aside, 0 refused", result.Output, StringComparison.Ordinal);
        Assert.EndsWith("12 rows read, 0 set aside, 0 refused", result.Output.TrimEnd(), StringComparison.Ordinal);
    }

    [Fact]
    public void Its_weather_agrees()
    {
        ExampleSite.TakenIn(_home);
        var printed = Csv("weather");
        var expected = Expected("weather");
        Assert.Equal(expected.Rows.Count, printed.Rows.Count);
        foreach (var (want, got) in expected.Rows.Zip(printed.Rows))
        {
            Assert.Equal(expected.Text(want, "date"), printed.Text(got, "date"));
            foreach (var column in (string[])["eto_mm", "rain_mm", "tmax_c", "tmin_c"])
            {
                Assert.Equal(expected.Number(want, column)!.Value, printed.Number(got, column)!.Value, DepthToleranceMm);
            }
        }
    }

    [Fact]
    public void Its_balance_agrees_in_every_column()
    {
        ExampleSite.TakenIn(_home);
        var printed = Csv("balance");
        var expected = Expected("balance");
        Assert.Equal(expected.Rows.Count, printed.Rows.Count);
        string[] columns = ["eto_mm", "k", "ks", "etc_mm", "rain_mm", "intercepted_mm", "runoff_mm", "irrigation_mm", "hose_mm", "drainage_mm", "probe_mm", "depletion_mm", "raw_mm", "taw_mm"];
        foreach (var (want, got) in expected.Rows.Zip(printed.Rows))
        {
            Assert.Equal(expected.Text(want, "controller") + expected.Text(want, "station"), printed.Text(got, "controller") + printed.Text(got, "station"));
            foreach (var column in columns)
            {
                Assert.Equal(expected.Number(want, column)!.Value, printed.Number(got, column)!.Value, DepthToleranceMm);
            }
        }
    }

    [Fact]
    public void Its_advice_agrees_on_all_thirteen_mornings()
    {
        ExampleSite.TakenIn(_home);
        var expected = Expected("advice");
        foreach (var morning in expected.Rows.GroupBy(row => expected.Text(row, "date")))
        {
            var printed = Csv("advice", "--date", morning.Key);
            foreach (var (want, got) in morning.Zip(printed.Rows))
            {
                foreach (var column in (string[])["date", "controller", "program", "setting", "advice", "percent"])
                {
                    Assert.Equal(expected.Text(want, column), printed.Text(got, column));
                }

                Assert.Equal(expected.Number(want, "exact_percent") is null, printed.Number(got, "exact_percent") is null);
                Assert.Equal(expected.Number(want, "exact_percent") ?? 0, printed.Number(got, "exact_percent") ?? 0, PercentTolerance);
            }
        }
    }

    [Fact]
    public void Taken_in_twice_it_prints_the_same_bytes()
    {
        ExampleSite.TakenIn(_home);
        var before = Run("balance", "--format", "csv").Output;
        Assert.Contains("known already", Run("ingest", ExampleSite.Logbook, ExampleSite.Weather).Output, StringComparison.Ordinal);
        Assert.Equal(before, Run("balance", "--format", "csv").Output);
    }

    [Fact]
    public void Weather_that_came_day_by_day_in_a_growing_file_gives_the_same_bytes()
    {
        ExampleSite.TakenIn(_home);
        var atOnce = Run("balance", "--format", "csv").Output;
        using var other = new TestHome();
        ExampleSite.PutInto(other);
        var file = Path.Combine(other.Path, "yard-hourly.csv");
        foreach (var until in (string[])["2026-06-04 13:00", "2026-06-09 23:00", "2026-06-18 00:00"])
        {
            File.WriteAllText(file, ExampleSite.WeatherUntil(until));
            Assert.Equal(0, RunningProgram.Run("ingest", "--home", other.Path, file).ExitCode);
        }

        Assert.Equal(0, RunningProgram.Run("ingest", "--home", other.Path, ExampleSite.Logbook).ExitCode);
        Assert.Equal(atOnce, RunningProgram.Run("balance", "--home", other.Path, "--format", "csv").Output);
    }

    [Fact]
    public void Mornings_issued_one_after_another_say_what_single_ones_say_and_change_nothing_before()
    {
        var site = ExampleSite.TakenIn(_home);
        var single = Run("advice", "--date", "2026-06-06", "--format", "csv").Output;
        var balance = Run("balance", "--format", "csv").Output;
        Assert.Equal(0, Run("morning", "--date", "2026-06-05").ExitCode);
        Assert.Equal(0, Run("morning", "--date", "2026-06-06").ExitCode);
        Assert.Equal(single, File.ReadAllText(Path.Combine(site.ReportFolder(new DateOnly(2026, 6, 6)), "advice.csv")));
        Assert.Equal(single, Run("advice", "--date", "2026-06-06", "--format", "csv").Output);
        Assert.Equal(balance, Run("balance", "--format", "csv").Output);
    }

    private static CsvRows Expected(string what) => CsvRows.Of(File.ReadAllText(Path.Combine(ExampleSite.Folder, $"expected-{what}.csv")));

    private CsvRows Csv(params string[] arguments) => CsvRows.Of(Run([.. arguments, "--format", "csv"]).Output);

    private ProgramResult Run(params string[] arguments) => RunningProgram.Run([arguments[0], "--home", _home.Path, .. arguments[1..]]);
}
