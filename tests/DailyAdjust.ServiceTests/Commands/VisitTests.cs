using System.Text.Json;
using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>Visits through the real program: C1 is seen by its crew every day, C2 by a contractor on Mondays, C3 on the eighth of the month.</summary>
public sealed class VisitTests : IDisposable
{
    /// <summary>A Wednesday.</summary>
    private const string Date = "2026-06-10";

    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Only_the_box_that_is_visited_gets_numbers_and_the_others_are_told_what_not_going_costs()
    {
        Course();
        var sheet = Morning();
        Assert.Equal(["C1/P1"], WithNumber(sheet));
        Assert.Equal(["C2/P1", "C3/P1"], sheet.GetProperty("ifVisited").EnumerateArray().Select(Name).Order(StringComparer.Ordinal));
        Assert.Equal(
            [("C2/P1", "2026-06-15"), ("C3/P1", "2026-07-08")],
            sheet.GetProperty("ifVisited").EnumerateArray().Select(w => (Name(w), w.GetProperty("nextVisit").GetString()!)).Order());
        Assert.Contains("If you can open only some of these boxes, in this order:", Report(), StringComparison.Ordinal);
    }

    [Fact]
    public void Visit_gives_the_box_its_numbers_until_its_next_planned_visit_and_stands_in_the_logbook()
    {
        Course();
        var before = Exact(Morning("--visit", "C2"), "C2/P1");
        Assert.NotNull(before);
        var sheet = Morning();
        Assert.Equal(["C1/P1", "C2/P1"], WithNumber(sheet));
        Assert.Equal(["C3/P1"], sheet.GetProperty("ifVisited").EnumerateArray().Select(Name));
        Assert.Equal(before, Exact(sheet, "C2/P1"));

        // On the planned Monday it is judged again without a word.
        Assert.Contains("C2/P1", WithNumber(Morning(date: "2026-06-15")));
        Assert.DoesNotContain("C2/P1", WithNumber(Morning(date: "2026-06-16")));
    }

    [Fact]
    public void Advice_tells_what_a_visit_would_bring_and_changes_nothing()
    {
        Course();
        Morning();
        var would = Run("advice", "--date", Date, "--visit", "C3", "--format", "csv");
        Assert.Contains("Not issued", would.Error, StringComparison.Ordinal);
        var row = would.Output.Split('\n').Single(l => l.StartsWith(Date + ",C3,", StringComparison.Ordinal));
        Assert.NotEqual("", row.Split(',')[6]);
        var plain = Run("advice", "--date", Date, "--format", "csv").Output.Split('\n').Single(l => l.StartsWith(Date + ",C3,", StringComparison.Ordinal));
        Assert.Equal("", plain.Split(',')[6]);
        Assert.Equal(["C1/P1"], WithNumber(Morning()));
    }

    [Fact]
    public void The_eighth_of_the_month_is_the_monthly_boxs_day()
    {
        Course();
        Assert.Equal(["C1/P1", "C2/P1", "C3/P1"], WithNumber(Morning(date: "2026-06-08")));
    }

    [Fact]
    public void A_place_that_is_none_is_told()
    {
        Course();
        var result = RunningProgram.Run("morning", "--home", _home.Path, "--date", Date, "--visit", "C9");
        Assert.Equal(2, result.ExitCode);
        Assert.Contains("--visit C9: there is no such controller or program.", result.Error, StringComparison.Ordinal);
    }

    /// <summary>The example's ground and weather under three boxes that run every night.</summary>
    private SiteFolder Course()
    {
        var site = ExampleSite.PutInto(_home);
        var yaml = File.ReadAllText(site.SiteFile);
        File.WriteAllText(site.SiteFile, yaml[..yaml.IndexOf("controllers:", StringComparison.Ordinal)] + """
            controllers:
              - id: C1
                route: 1
                percent: { applies: program, min: 0 %, max: 200 %, step: 5 % }
                programs:
                  - { id: P1, starts: ["21:30"], days: every day, visit: daily }
              - id: C2
                route: 2
                percent: { applies: program, min: 0 %, max: 200 %, step: 5 % }
                programs:
                  - { id: P1, starts: ["22:30"], days: every day, visit: [mon] }
              - id: C3
                route: 3
                percent: { applies: program, min: 0 %, max: 200 %, step: 5 % }
                programs:
                  - { id: P1, starts: ["23:30"], days: every day, visit: { day: 8 } }

            """);
        File.WriteAllText(site.StationsFile, """
            controller,station,name,area,minutes P1,precipitation rate (in/h),rate known,flow (gpm),area watered (ft²)
            C1,1,first,fairways,20,0.48,catalogue,104,20800
            C2,1,second,fairways,55,0.48,catalogue,104,20800
            C3,1,third,fairways,45,0.48,catalogue,104,20800

            """);
        File.Copy(ExampleSite.Weather, Path.Combine(site.Inbox, "yard-1.csv"));
        return site;
    }

    private JsonElement Morning(string option = "", string value = "", string date = Date)
    {
        Run(["morning", "--date", date, .. option.Length > 0 ? new[] { option, value } : []]);
        return JsonDocument.Parse(File.ReadAllText(Path.Combine(_home.Home.Site(ExampleSite.Name).Path, "reports", date, "advice.json"))).RootElement;
    }

    private string Report() => string.Join(' ', File.ReadAllText(Path.Combine(_home.Home.Site(ExampleSite.Name).Path, "reports", Date, "report-full.txt")).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private ProgramResult Run(params string[] arguments)
    {
        var result = RunningProgram.Run([arguments[0], "--home", _home.Path, .. arguments[1..]]);
        return result.ExitCode == 0 ? result : throw new InvalidOperationException(result.ToString());
    }

    private static string Name(JsonElement row) => $"{row.GetProperty("controller").GetString()}/{row.GetProperty("program").GetString()}";

    private static List<string> WithNumber(JsonElement sheet) =>
        [.. sheet.GetProperty("programs").EnumerateArray().Where(p => p.GetProperty("exactPercent").ValueKind == JsonValueKind.Number).Select(Name)];

    private static double? Exact(JsonElement sheet, string program) =>
        sheet.GetProperty("programs").EnumerateArray().Where(p => string.Equals(Name(p), program, StringComparison.Ordinal)).Select(p => (double?)p.GetProperty("exactPercent").GetDouble()).FirstOrDefault();
}
