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
