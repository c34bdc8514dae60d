using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Xunit;

namespace DailyAdjust.BrowserTests;

/// <summary>What comes out of a printer, in black on white.</summary>
public sealed class PrintTests(Chromium chromium, Pages pages)
{
    private const string NothingAfterTheRound = "for (const round = document.querySelector('.stop').closest('section'); round.nextElementSibling;) { round.nextElementSibling.remove(); }";
    private const string NothingBeforeTheRound = "document.body.replaceChildren(document.querySelector('.stop').closest('section'))";

    /// <summary>The last box again and again, until there are so many dials.</summary>
    private const string Dials = "most => { for (const last = [...document.querySelectorAll('.stop')].pop(); document.querySelectorAll('.dial').length < most;) { last.after(last.cloneNode(true)); } }";

    [Theory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public async Task The_round_of_the_demo_and_what_leads_to_it_fit_one_page(string paper)
    {
        await using var shown = await chromium.OpenAsync(pages["sheet"]);
        Assert.InRange(await PagesAsync(shown.Page, paper), 2, 9);
        await shown.Page.EvaluateAsync(NothingAfterTheRound);
        Assert.Equal(8, await shown.Page.Locator(".dial").CountAsync());
        Assert.Equal(1, await PagesAsync(shown.Page, paper));
    }

    /// <summary>With reasons as long as the demo's, and on two boxes more; where much stands before them they begin a page.</summary>
    [Theory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public async Task Twelve_changes_fit_one_page_and_are_not_torn_over_two(string paper)
    {
        await using var shown = await chromium.OpenAsync(pages["sheet"]);
        await shown.Page.EvaluateAsync(NothingAfterTheRound);
        await shown.Page.EvaluateAsync(Dials, 12);
        Assert.Equal(12, await shown.Page.Locator(".dial").CountAsync());
        Assert.InRange(await PagesAsync(shown.Page, paper), 1, 2);
        await shown.Page.EvaluateAsync(NothingBeforeTheRound);
        Assert.Equal(1, await PagesAsync(shown.Page, paper));
    }

    [Theory]
    [InlineData("sheet")]
    [InlineData("index")]
    [InlineData("season")]
    [InlineData("door cards")]
    public async Task On_paper_there_is_no_colour(string name)
    {
        // A dark screen must not make dark paper either.
        await using var shown = await chromium.OpenAsync(pages[name], 794, dark: true);
        var page = shown.Page;
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        var shot = await page.ScreenshotAsync(new() { FullPage = true });

        // On a page of its own: ours let no picture in.
        var counting = await page.Context.NewPageAsync();
        var seen = await counting.EvaluateAsync<int[]>("""
            async shot => {
              const picture = new Image();
              picture.src = 'data:image/png;base64,' + shot;
              await picture.decode();
              const canvas = new OffscreenCanvas(picture.width, picture.height).getContext('2d');
              canvas.drawImage(picture, 0, 0);
              const points = canvas.getImageData(0, 0, picture.width, picture.height).data;
              let colour = 0, white = 0;
              for (let i = 0; i < points.length; i += 4) {
                const most = Math.max(points[i], points[i + 1], points[i + 2]), least = Math.min(points[i], points[i + 1], points[i + 2]);
                colour = Math.max(colour, most - least);
                white += least > 250 ? 1 : 0;
              }
              return [colour, Math.round(100 * white / (points.length / 4))];
            }
            """, Convert.ToBase64String(shot));
        Assert.InRange(seen[0], 0, 2);
        Assert.InRange(seen[1], 70, 99);
    }

    /// <summary>A heading stands with what it heads, and a frame, a drawing or a legend on one page.</summary>
    [Theory]
    [InlineData("sheet", "A4")]
    [InlineData("sheet", "Letter")]
    [InlineData("doubtful sheet", "A4")]
    [InlineData("doubtful sheet", "Letter")]
    [InlineData("pause sheet", "A4")]
    [InlineData("pause sheet", "Letter")]
    [InlineData("Spanish sheet", "A4")]
    [InlineData("Spanish sheet", "Letter")]
    [InlineData("pause index", "A4")]
    public async Task Nothing_that_is_read_together_is_torn_over_two_pages(string name, string paper)
    {
        await using var shown = await chromium.OpenAsync(pages[name]);
        var places = await Printed.PlacesAsync(shown.Page, "h2, h3, .key, .note, .stop, figure", paper);
        Assert.True(places.Count > 8);
        Assert.Equal([], places.Where(p => p.From != p.To));
    }

    [Fact]
    public async Task A_torn_frame_would_be_found()
    {
        await using var shown = await chromium.OpenAsync(pages["doubtful sheet"]);
        await shown.Page.EvaluateAsync("document.querySelector('.note').insertAdjacentHTML('afterbegin', '<div style=height:400mm></div>')");
        Assert.Contains(await Printed.PlacesAsync(shown.Page, ".note", "A4"), p => p.From != p.To);
    }

    /// <summary>However much is assumed of the weather, and though a box lost its power.</summary>
    [Theory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public async Task The_first_page_holds_the_round_with_its_caution(string paper)
    {
        foreach (var name in new[] { "sheet", "doubtful sheet", "pause sheet", "Spanish sheet" })
        {
            await using var shown = await chromium.OpenAsync(pages[name]);
            var dials = await Printed.PlacesAsync(shown.Page, ".stop, .quiet:has(+ .stop), .verify", paper);
            Assert.All(dials, dial => Assert.Equal((1, 1), (dial.From, dial.To)));
        }
    }

    /// <summary>A round that is carried on its own says which sheet it is of, what holds at every box, and which box to verify.</summary>
    [Fact]
    public async Task A_round_of_the_page_over_all_sites_can_be_carried_alone()
    {
        await using var shown = await chromium.OpenAsync(pages["pause index"]);
        await shown.Page.EmulateMediaAsync(new() { Media = Media.Print });
        var round = await shown.Page.Locator("section.round").InnerTextAsync();
        Assert.Contains("Sheet 2026-07-17/1", round, StringComparison.Ordinal);
        Assert.Contains("lock out before opening a box", round, StringComparison.Ordinal);
        Assert.Contains("B2 (behind the second green) lost power: verify", round, StringComparison.Ordinal);
    }

    /// <summary>What is folded above the round stands on paper after it.</summary>
    [Fact]
    public async Task Notes_on_the_weather_are_printed_after_the_round()
    {
        await using var shown = await chromium.OpenAsync(pages["doubtful sheet"]);
        var notes = shown.Page.Locator("section.paper:has-text('wind speed')");
        Assert.False(await notes.IsVisibleAsync());
        await shown.Page.EmulateMediaAsync(new() { Media = Media.Print });
        Assert.Contains("wind speed", await notes.InnerTextAsync(), StringComparison.Ordinal);
        Assert.True((await notes.BoundingBoxAsync())!.Y > (await shown.Page.Locator(".stop").Last.BoundingBoxAsync())!.Y);
    }

    /// <summary>The tables behind the charts are for a screen.</summary>
    [Fact]
    public async Task What_is_folded_is_not_printed()
    {
        await using var shown = await chromium.OpenAsync(pages["sheet"]);
        var page = shown.Page;
        Assert.NotEqual(0, await page.Locator("details").CountAsync());
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        await page.EvaluateAsync("document.querySelectorAll('details').forEach(d => d.open = true)");
        Assert.Equal(0, await page.EvaluateAsync<int>("[...document.querySelectorAll('details')].filter(d => d.getClientRects().length > 0).length"));
    }

    private static async Task<int> PagesAsync(IPage page, string paper)
    {
        var pdf = Encoding.Latin1.GetString(await page.PdfAsync(new() { Format = paper, PreferCSSPageSize = false }));
        return Regex.Count(pdf, @"/Type\s*/Page\b", RegexOptions.None, TimeSpan.FromSeconds(10));
    }
}
