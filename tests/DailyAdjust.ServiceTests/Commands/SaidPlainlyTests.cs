using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>What the program says where a person or a script could take silence for "all is well".</summary>
public sealed class SaidPlainlyTests : IDisposable
{
    private readonly TestHome _home = new();
    private readonly SiteFolder _site;

    public SaidPlainlyTests() => _site = ExampleSite.TakenIn(_home);

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Refused_rows_end_an_ingest_with_2_and_the_others_count()
    {
        var file = Path.Combine(_home.Path, "logbook.csv");
        File.WriteAllText(file, "time,kind,where,value,unit,until,by,note\n2026-06-15 10:30,setting,C1/P2,90,%,,,\n2026-06-15 10:45,settting,C1/P1,90,%,,,\n");
        var nothing = Path.Combine(_home.Path, "holiday.csv");
        File.WriteAllText(nothing, "a,b\n1,2\n");
        var result = Run("ingest", file, nothing);
        Assert.Equal(2, result.ExitCode);
        Assert.Contains("\n1 rows read, 0 set aside, 1 refused\n", result.Output, StringComparison.Ordinal);
        Assert.EndsWith("0 rows read, 0 set aside, 0 refused\n", result.Output, StringComparison.Ordinal);
        Assert.EndsWith("Not everything was taken: 1 file and 1 row refused. All other rows count.\n", result.Error, StringComparison.Ordinal);

        // The good row is in; the same file again says the same.
        Assert.Contains("Known already", Run("log", "setting", "C1/P2", "90", "--time", "2026-06-15 10:30").Output, StringComparison.Ordinal);
        var again = Run("ingest", file);
        Assert.Equal(2, again.ExitCode);
        Assert.Contains("known already", again.Output, StringComparison.Ordinal);
        Assert.EndsWith("Not everything was taken: 1 row refused. All other rows count.\n", again.Error, StringComparison.Ordinal);
        var good = Run("ingest", ExampleSite.Logbook);
        Assert.Equal(0, good.ExitCode);
        Assert.DoesNotContain("Not everything", good.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_range_without_a_sheet_is_told_and_the_tables_stay_whole()
    {
        string[] january = ["--from", "2026-01-01", "--to", "2026-01-31"];
        Assert.Equal((0, "No sheet was issued from 2026-01-01 to 2026-01-31.\n"), Of(Run(["advice", .. january])));
        RunMorning();
        Assert.Equal((0, "No sheet was issued from 2026-01-01 to 2026-01-31. There are some from 2026-06-10 to 2026-06-10.\n"), Of(Run(["advice", .. january])));
        Assert.Equal("[]\n", Run(["advice", .. january, "--format", "json"]).Output);
        var csv = Run(["advice", .. january, "--format", "csv"]);
        Assert.Equal("date,controller,program,setting,advice,percent,exact_percent,next_start,finishes,reason\n", csv.Output);
        Assert.Equal("No sheet was issued from 2026-06-11. There are some from 2026-06-10 to 2026-06-10.\n", Run("advice", "--from", "2026-06-11").Error);
        Assert.Equal("", Run("advice", "--from", "2026-06-01", "--to", "2026-06-30").Error);

        static (int, string) Of(ProgramResult result) => (result.ExitCode, result.Error);
    }

    [Fact]
    public void A_failure_names_its_site_once()
    {
        var early = Run("morning", "--date", "2020-01-01");
        Assert.Equal((2, "tamarack: 2020-01-01 lies before the balance begins (2026-06-01).\nThe start stands in site.yaml.\n"), (early.ExitCode, early.Error));
        File.WriteAllText(_home.EmptySite("broken").SiteFile, "site: {\n");
        Assert.StartsWith("broken: The site's description cannot be read: stations.csv:1:1: There is no such file.", Run("morning", "--site", "broken", "--date", "2026-06-10").Error, StringComparison.Ordinal);
    }

    private void RunMorning() => Assert.Equal(0, Run("morning", "--date", "2026-06-10").ExitCode);

    private ProgramResult Run(params string[] arguments)
    {
        var result = RunningProgram.Run([arguments[0], "--home", _home.Path, .. arguments[1..]]);
        return result with { Output = result.Output.ReplaceLineEndings("\n"), Error = result.Error.ReplaceLineEndings("\n") };
    }
}
