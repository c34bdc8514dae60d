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

    /// <summary>A phone of 360 whose scroll bar takes its room.</summary>
    private const int Phone = 345;

    public static TheoryData<string, int, bool> Views
    {
        get
        {
            var views = new TheoryData<string, int, bool>();
            foreach (var page in Pages.Names)
            {
                foreach (var width in new[] { Phone, 768, 1280 })
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

    /// <summary>Names are broken only where they are longer than a column that people still read; our own words never.</summary>
    [Theory]
    [InlineData("week")]
    [InlineData("season")]
    [InlineData("sheet")]
    [InlineData("hostile sheet")]
    [InlineData("hostile season")]
    [InlineData("doubtful sheet")]
    [InlineData("pause sheet")]
    [InlineData("pause week")]
    [InlineData("pause index")]
    [InlineData("Spanish sheet")]
    public async Task No_short_word_is_torn_on_a_phone(string name)
    {
        await using var shown = await chromium.OpenAsync(pages[name], Phone);
        await shown.Page.EvaluateAsync("document.querySelectorAll('details').forEach(d => d.open = true)");
        Assert.Equal("", await shown.Page.EvaluateAsync<string>(TornWords));
    }

    [Fact]
    public async Task A_torn_word_would_be_found()
    {
        await using var shown = await chromium.OpenAsync(pages["sheet"], Phone);
        await shown.Page.EvaluateAsync("document.querySelector('.dial b').style.cssText = 'display: block; width: 1em'");
        Assert.NotEqual("", await shown.Page.EvaluateAsync<string>(TornWords));
    }

    [Fact]
    public async Task What_a_dial_shows_and_is_set_to_stands_beside_its_program_on_a_phone()
    {
        foreach (var name in new[] { "pause sheet", "pause index", "Spanish sheet" })
        {
            await using var shown = await chromium.OpenAsync(pages[name], Phone);
            Assert.NotEqual(0, await shown.Page.GetByText(name.StartsWith("Spanish", StringComparison.Ordinal) ? "o en pausa →" : "or paused →").CountAsync());
            Assert.True(await shown.Page.EvaluateAsync<bool>("""
                [...document.querySelectorAll('.dial')].every(dial => {
                  const [name, turn, , box] = [...dial.children].map(e => e.getBoundingClientRect());
                  return name.width >= 88 && name.right <= turn.left && turn.right <= box.left && box.right <= dial.getBoundingClientRect().right;
                })
                """), name);
        }
    }

    /// <summary>What is done must not hide behind what is only known: a phone shows the round after two screens, whatever the weather station says.</summary>
    [Fact]
    public async Task Notes_on_the_weather_do_not_keep_the_round_away()
    {
        await using var shown = await chromium.OpenAsync(pages["doubtful sheet"], Phone);
        var page = shown.Page;
        var notes = page.Locator("section.note:has(details:has-text('wind speed'))");
        Assert.Contains("Assumed or estimated: Thu 9 July to Wed 15 July.", await notes.InnerTextAsync(), StringComparison.Ordinal);
        Assert.InRange((await notes.BoundingBoxAsync())!.Height, 60, 220);
        await notes.Locator("summary").ClickAsync();
        Assert.Contains("wind speed", await notes.InnerTextAsync(), StringComparison.Ordinal);
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

    /// <summary>Words of 8 letters or fewer that stand in two lines.</summary>
    private const string TornWords = """
        (() => {
          const torn = [], all = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT), range = document.createRange();
          for (let text; (text = all.nextNode());) {
            if (text.parentElement.closest('style, svg, code')) continue;
            for (const word of text.data.matchAll(/(?<=^|\s)\p{L}{2,8}(?=$|[\s.,:;])/gu)) {
              range.setStart(text, word.index);
              range.setEnd(text, word.index + word[0].length);
              if (new Set([...range.getClientRects()].filter(r => r.width > 0).map(r => Math.round(r.top))).size > 1) torn.push(word[0]);
            }
          }
          return torn.join(' ');
        })()
        """;

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
