using DailyAdjust.ServiceTests.Fallback;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>`summary` through the real program, on the example site.</summary>
public sealed class SummaryTests : IDisposable
{
    private readonly FallbackHome _home = new FallbackHome().With(("window:", "water: { allotment: 5 acre-ft, permit: { day: 100 m3, month: 900 m3, rate: 200 gpm } }\nwindow:"));

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Days_months_programs_and_areas_add_up_to_the_same_water()
    {
        TakeIn("2026-06-15 05:00");
        double Sum(string by) => CsvRows.Of(Summary("--format", "csv", "--by", by)) is var rows ? rows.Rows.Sum(r => rows.Number(r, "estimated_m3")!.Value) : 0;
        var total = CsvRows.Of(Summary("--format", "csv", "--by", "total"));
        var whole = total.Number(total.Rows[0], "used_m3")!.Value;
        Assert.True(whole > 100, $"{whole} m³");
        foreach (var by in (string[])["day", "month", "program", "area"])
        {
            Assert.Equal(whole, Sum(by), 0.02);
        }

        // As the balance has it: gross depth of the stations on their ground is not in its columns, net is.
        var areas = CsvRows.Of(Summary("--format", "csv", "--by", "area"));
        Assert.All(areas.Rows, r => Assert.True(areas.Number(r, "irrigation_mm") >= 0));
        Assert.Equal(["allotment", "permit-day", "permit-month"], total.Rows.Select(r => total.Text(r, "kind")).Where(k => k is not ("span" or "year-before")));
    }

    [Fact]
    public void In_words_with_the_places_limits()
    {
        TakeIn("2026-06-15 05:00");
        var text = string.Join(' ', Summary().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("Water used, Mon 1 June to Sun 14 June 2026", text, StringComparison.Ordinal);
        Assert.Contains("Estimated from minutes and flow: ", text, StringComparison.Ordinal);
        Assert.Contains("Allotment of the year since 1 June 2026: ", text, StringComparison.Ordinal);
        Assert.Contains("Permit, at once: most on ", text, StringComparison.Ordinal);
        Assert.Contains("local rules go before anything printed here", text, StringComparison.Ordinal);

        var week = string.Join(' ', Summary("--week", "--date", "2026-06-15").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("Water used, Mon 8 June to Sun 14 June 2026", week, StringComparison.Ordinal);
    }

    [Fact]
    public void The_first_sheet_of_a_week_writes_the_books_of_the_one_before_and_of_the_season()
    {
        TakeIn("2026-06-14 05:00");
        _home.Morning("2026-06-14");
        Assert.Equal(["season-2026", "week-2026-06-01"], Names()); // the first week that is over by then
        TakeIn("2026-06-15 05:00");
        var sheet = _home.Morning("2026-06-15");
        Assert.Equal(["season-2026", "week-2026-06-01", "week-2026-06-08"], Names());
        var page = File.ReadAllText(Path.Combine(_home.Site.Path, "summaries", "week-2026-06-08.html"));
        Assert.Contains("Mon 8 June to Sun 14 June 2026", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.Equal(7, File.ReadLines(Path.Combine(_home.Site.Path, "summaries", "week-2026-06-08.csv")).Count() - 1);
        Assert.Contains("Allotment of the year since 1 June 2026", File.ReadAllText(Path.Combine(_home.Site.Path, "reports", "2026-06-15", "report.html")), StringComparison.Ordinal);
        Assert.NotEmpty(sheet.Text);
    }

    [Trait("Promise", "11")]
    [Fact]
    public void A_station_named_as_a_formula_or_a_tag_harms_neither_page_nor_table()
    {
        _home.With(("name: Greens,", "name: \"=cmd() <script>\","));
        TakeIn("2026-06-15 05:00");
        _home.Morning("2026-06-15");
        Assert.DoesNotContain("<script", File.ReadAllText(Path.Combine(_home.Site.Path, "summaries", "week-2026-06-08.html")), StringComparison.Ordinal);
        Assert.DoesNotContain(",=cmd", Summary("--format", "csv", "--by", "program"), StringComparison.Ordinal);
    }

    private List<string> Names() => [.. Directory.GetFiles(Path.Combine(_home.Site.Path, "summaries"), "*.html").Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal)];

    private void TakeIn(string until)
    {
        _home.Drop("yard-2026.csv", ExampleSite.WeatherUntil(until));
        _home.Run("ingest", Path.Combine(_home.Site.Inbox, "yard-2026.csv"));
    }

    private string Summary(params string[] arguments) => _home.Run("summary", arguments);
}
