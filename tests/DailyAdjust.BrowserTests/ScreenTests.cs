using System.Globalization;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Xunit;

namespace DailyAdjust.BrowserTests;

/// <summary>Every page at the widths of a phone, a tablet and a desk, in the light and in the dark.</summary>
public sealed class ScreenTests(Chromium chromium, Pages pages)
{
    private static readonly AxeRunOptions Wcag = new()
    {
        RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa"] },
    };

    public static TheoryData<string, int, bool> Views
    {
        get
        {
            var views = new TheoryData<string, int, bool>();
            foreach (var page in Pages.Names)
            {
                foreach (var width in new[] { 360, 768, 1280 })
                {
                    views.Add(page, width, false);
                    views.Add(page, width, true);
                }
            }

            return views;
        }
    }

    /// <summary>With everything folded, and with everything opened.</summary>
    [Theory]
    [MemberData(nameof(Views))]
    public async Task Nothing_has_to_be_scrolled_sideways_and_nobody_is_left_out(string name, int width, bool dark)
    {
        await using var shown = await chromium.OpenAsync(pages[name], width, dark);
        var page = shown.Page;
        await AssertFitsAsync(page);
        await page.EvaluateAsync("document.querySelectorAll('details').forEach(d => d.open = true)");
        await AssertFitsAsync(page);
        var found = await page.RunAxe(Wcag);
        Assert.NotEmpty(found.Passes);
        Assert.True(found.Violations.Length == 0, Said(found.Violations));
    }

    /// <summary>A checker that finds nothing anywhere proves nothing.</summary>
    [Fact]
    public async Task Faint_letters_and_a_wide_table_would_be_found()
    {
        await using var shown = await chromium.OpenAsync(pages["index"], 360);
        await shown.Page.EvaluateAsync("document.body.style.color = '#bbb'");
        Assert.Contains("color-contrast", (await shown.Page.RunAxe(Wcag)).Violations.Select(v => v.Id));
        await AssertFitsAsync(shown.Page);
        await shown.Page.EvaluateAsync("document.querySelector('h1').style.width = '400px'");
        await Assert.ThrowsAsync<Xunit.Sdk.TrueException>(() => AssertFitsAsync(shown.Page));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task The_page_is_as_light_or_dark_as_the_system(bool dark)
    {
        foreach (var name in Pages.Names)
        {
            await using var shown = await chromium.OpenAsync(pages[name], dark: dark);
            var page = shown.Page;
            var background = await page.EvaluateAsync<string>("getComputedStyle(document.body).backgroundColor");
            var parts = background.Split('(', ')')[1].Split(',').Take(3).Select(p => int.Parse(p, CultureInfo.InvariantCulture)).ToList();
            Assert.True(dark ? parts.Max() < 60 : parts.Min() > 240, $"{name}: {background}");
        }
    }

    private static async Task AssertFitsAsync(IPage page)
    {
        var (needed, there) = (await page.EvaluateAsync<int>("document.documentElement.scrollWidth"), await page.EvaluateAsync<int>("document.documentElement.clientWidth"));
        var widest = await page.EvaluateAsync<string>(
            "[...document.querySelectorAll('body *')].filter(e => e.getBoundingClientRect().right > document.documentElement.clientWidth + 1).slice(0, 3).map(e => e.outerHTML.slice(0, 300)).join('\\n')");
        Assert.True(needed <= there && widest.Length == 0, $"{needed} of {there} px are needed:\n{widest}");
    }

    private static string Said(AxeResultItem[] violations) => string.Join(
        '\n', violations.Select(v => $"{v.Id}: {v.Help}\n  {string.Join("\n  ", v.Nodes.Take(4).Select(n => $"{n.Html} ({string.Join("; ", n.Any.Concat(n.All).Select(c => c.Message))})"))}"));
}
