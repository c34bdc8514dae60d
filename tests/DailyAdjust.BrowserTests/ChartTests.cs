using Xunit;

namespace DailyAdjust.BrowserTests;

/// <summary>What stands in a drawing stands inside it, on every page that has one.</summary>
public sealed class ChartTests(Chromium chromium, Pages pages)
{
    private const string Cut = """
        [...document.querySelectorAll('svg')].flatMap(svg => {
          const view = svg.viewBox.baseVal;
          return [...svg.querySelectorAll('text')].filter(text => {
            const box = text.getBBox();
            return box.x < view.x - 0.5 || box.x + box.width > view.x + view.width + 0.5 || box.y < view.y - 0.5 || box.y + box.height > view.y + view.height + 0.5;
          }).map(text => text.textContent);
        }).join(' | ')
        """;

    public static TheoryData<string> Names { get; } = [.. Pages.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task No_label_is_cut(string name)
    {
        await using var shown = await chromium.OpenAsync(pages[name]);
        Assert.Equal("", await shown.Page.EvaluateAsync<string>(Cut));
    }

    [Fact]
    public async Task A_label_that_is_cut_would_be_found()
    {
        await using var shown = await chromium.OpenAsync(pages["sheet"]);
        Assert.NotEqual(0, await shown.Page.Locator("svg text").CountAsync());
        await shown.Page.EvaluateAsync("document.querySelector('svg text').textContent = '280,000,000,000,000 gal 280,000,000,000,000 gal 280,000,000,000,000 gal'");
        Assert.NotEqual("", await shown.Page.EvaluateAsync<string>(Cut));
    }

    [Fact]
    public async Task The_allotment_is_a_line_with_its_name_beside_the_months_water()
    {
        await using var shown = await chromium.OpenAsync(pages["doubtful sheet"]);
        var chart = shown.Page.Locator("section:has(> h2:has-text('Water used'))");
        Assert.Equal(1, await chart.Locator("figure svg > line.allotment").CountAsync());
        Assert.Contains("the allotment, used evenly over its year: 1,110,000 gal this month", (await chart.InnerTextAsync()).Replace('\u00A0', ' '), StringComparison.Ordinal);
    }
}
