using System.Text.Json;
using DailyAdjust.ServiceTests.Fallback;
using DailyAdjust.ServiceTests.Night;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>`visits` through the real program: three boxes that somebody sees every day, and no time for all of them.</summary>
public sealed class VisitsTests : IDisposable
{
    private const string Date = "2026-06-10";
    private readonly FallbackHome _home = NightHome.Create();

    public VisitsTests()
    {
        _home.Drop("yard-2026.csv", ExampleSite.WeatherUntil(Date + " 05:00"));
        _home.Run("log", "setting", "site", "200", "--date", "2026-06-09", "--time", "18:00");
        _home.Run("log", "setting", "K2", "10", "--date", "2026-06-09", "--time", "18:01");
        _home.Morning(Date);
    }

    public void Dispose() => _home.Dispose();

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void The_boxes_named_are_those_whose_being_left_costs_most(int boxes)
    {
        var rows = Rows(boxes);
        var costs = rows.GroupBy(r => r.Box).ToDictionary(g => g.Key, g => g.Sum(r => r.Cost), StringComparer.Ordinal);
        Assert.Equal(3, costs.Count);
        var left = costs.Where(c => rows.Any(r => Is(r, c.Key) && !r.Go)).Sum(c => c.Value);
        Assert.Equal(boxes, costs.Keys.Count(k => rows.Any(r => Is(r, k) && r.Go)));
        var all = costs.Keys.ToList();
        foreach (var choice in Enumerable.Range(0, 1 << all.Count).Where(m => System.Numerics.BitOperations.PopCount((uint)m) == boxes))
        {
            Assert.True(left <= all.Where((_, i) => (choice & (1 << i)) == 0).Sum(k => costs[k]) + 1e-9);
        }
    }

    /// <summary>What the choice promises is what the program then reckons: the boxes are set as it said, and the rest still costs the same.</summary>
    [Fact]
    public void What_is_left_after_the_round_costs_what_was_said()
    {
        var before = Rows(1);
        Assert.Equal(3, before.Select(r => r.Box).Distinct(StringComparer.Ordinal).Count());
        foreach (var row in before.Where(r => r.Go))
        {
            _home.Run("log", "setting", $"{row.Box}/{row.Program}", row.Percent.Length > 0 ? row.Percent : "off", "--date", Date, "--time", "04:59");
        }

        Assert.Equal(before.Where(r => !r.Go).Select(r => (r.Box, r.Program, r.Cost)), Rows(2).Where(r => before.All(b => !b.Go || !Is(b, r.Box))).Select(r => (r.Box, r.Program, r.Cost)));
    }

    [Fact]
    public void People_read_the_boxes_their_lines_and_what_leaving_the_others_costs()
    {
        var text = Said("--date", Date, "--boxes", "1");
        Assert.Contains("If you can open only 1 of 3 boxes, this one, the costliest to leave: 1. K", text, StringComparison.Ordinal);
        Assert.Contains("Left as they are: K", text, StringComparison.Ordinal);
        Assert.Contains("Leaving them until their next visit costs: ", text, StringComparison.Ordinal);
        Assert.Contains("Each box is reckoned by itself and by the logbook, before numbers are cut to fit the night or the pump.", text, StringComparison.Ordinal);
        Assert.Contains("the costliest box to leave first: 1. K", Said("--date", Date), StringComparison.Ordinal);

        // Nothing was issued or logged by looking; the newest sheet's morning is meant where no date is given.
        Assert.Equal(_home.Run("visits", "--date", Date, "--format", "csv"), _home.Run("visits", "--format", "csv"));
        Assert.Equal(1, JsonDocument.Parse(File.ReadAllText(Path.Combine(_home.Site.Path, "reports", Date, "advice.json"))).RootElement.GetProperty("issue").GetInt32());
        Assert.Equal(4, JsonDocument.Parse(_home.Run("visits", "--format", "json")).RootElement.GetArrayLength());
    }

    [Fact]
    public void An_order_to_switch_off_comes_first()
    {
        var last = Rows(3).Last().Box;
        _home.Run("log", "hold", last, "--date", Date, "--time", "04:30", "--until", "2026-06-12", "--note", "drain work");
        Assert.Equal(last, Rows(1).First(r => r.Go).Box);
        Assert.Contains("switch it off, whatever it costs: hold: drain work", Said("--boxes", "1"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_program_that_is_off_with_a_note_is_turned_on_only_if_that_is_mended()
    {
        _home.Run("log", "off", "K2/P1", "--date", "2026-06-05", "--time", "18:00", "--note", "leak at green 4");
        _home.Run("log", "void", "setting", "site", "--date", "2026-06-09", "--time", "18:00");
        _home.Run("log", "void", "setting", "K2", "--date", "2026-06-09", "--time", "18:01");
        Assert.Matches(@"Lower greens \(K2/P1\): turn on at [0-9]+ %; .* Off since Fri 5 June, ""leak at green 4"": turn it on only if that is mended or over\.", Said("--date", Date));
    }

    /// <summary>Nobody answered the sheet of the day before: the list says so, as the sheet does.</summary>
    [Fact]
    public void A_round_that_nobody_answered_is_named()
    {
        Assert.DoesNotContain("Not answered", Said("--date", Date), StringComparison.Ordinal);
        Assert.Contains("! Not answered: the round of Wed 10 June. Today's numbers take it that nothing was changed. ", Said("--date", "2026-06-11"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0")]
    [InlineData("-1")]
    [InlineData("some")]
    public void A_number_that_is_none_ends_with_2(string boxes) =>
        Assert.Equal(2, RunningProgram.Run("visits", "--home", Path.GetDirectoryName(Path.GetDirectoryName(_home.Site.Path))!, "--boxes", boxes).ExitCode);

    /// <summary>What is printed, without its line breaks.</summary>
    private string Said(params string[] options) => string.Join(' ', _home.Run("visits", options).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static bool Is(Row row, string box) => string.Equals(row.Box, box, StringComparison.Ordinal);

    private List<Row> Rows(int boxes)
    {
        var csv = CsvRows.Of(_home.Run("visits", "--date", Date, "--boxes", boxes.ToString(System.Globalization.CultureInfo.InvariantCulture), "--format", "csv"));
        return [.. csv.Rows.Select(r => new Row(csv.Text(r, "controller"), csv.Text(r, "program"), csv.Text(r, "go") is "yes", csv.Text(r, "percent"), csv.Number(r, "cost") ?? 0))];
    }

    private sealed record Row(string Box, string Program, bool Go, string Percent, double Cost);
}
