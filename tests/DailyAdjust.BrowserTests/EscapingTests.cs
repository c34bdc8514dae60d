using Xunit;

namespace DailyAdjust.BrowserTests;

/// <summary>Names from files are text on the page, whatever stands in them, and a page asks nobody for anything.</summary>
public sealed class EscapingTests(Chromium chromium, Pages pages)
{
    [Theory]
    [InlineData("hostile sheet")]
    [InlineData("hostile index")]
    public async Task A_name_that_would_be_markup_is_shown_as_it_was_written(string name)
    {
        await using var shown = await chromium.OpenAsync(pages[name]);
        var page = shown.Page;
        var text = await page.InnerTextAsync("body");
        Assert.Contains(HostileNames.Script, text, StringComparison.Ordinal);
        Assert.Contains(HostileNames.Picture, text, StringComparison.Ordinal);
        Assert.Contains(HostileNames.Formula, text, StringComparison.Ordinal);
        Assert.NotEqual("owned", await page.TitleAsync());
        Assert.Equal(0, await page.Locator("script, img, iframe, object, embed, link").CountAsync());
        Assert.Equal(0, await page.EvaluateAsync<int>("[...document.querySelectorAll('*')].filter(e => [...e.attributes].some(a => a.name.startsWith('on'))).length"));
    }

    [Fact]
    public async Task A_page_asks_nobody_for_anything()
    {
        foreach (var name in Pages.Names)
        {
            await using var shown = await chromium.OpenAsync(pages[name]);
            var page = shown.Page;
            var asked = new List<string>();
            page.Request += (_, request) => asked.Add(request.Url);
            await page.ReloadAsync();
            Assert.Equal(new Uri(pages[name]).AbsoluteUri, Assert.Single(asked));
        }
    }
}
