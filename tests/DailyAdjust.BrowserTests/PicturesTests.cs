using System.Buffers.Binary;
using Microsoft.Playwright;
using Xunit;

namespace DailyAdjust.BrowserTests;

/// <summary>
/// The pictures of docs/report-explained.md, taken of the demo's real pages; tests/pictures.sh puts them into docs/pictures. Every run takes them, so that no part of the sheet goes
/// without the text noticing.
/// </summary>
public sealed class PicturesTests(Chromium chromium, Pages pages)
{
    private const int LargestBytes = 170_000;
    private const float Scale = 1.25f;

    /// <summary>A long list is cut: its first rows show what it is.</summary>
    private const string Shortened = "e => { e.style.maxHeight = '430px'; e.style.overflow = 'hidden'; }";

    /// <summary>Where to put them; nothing = nowhere.</summary>
    private static readonly string? Folder = Environment.GetEnvironmentVariable("PICTURES_FOLDER");

    /// <summary>Name, page, what of it.</summary>
    public static TheoryData<string, string, string> Parts { get; } = new()
    {
        { "asks", "sheet", ".note.asks" },
        { "round", "sheet", ".stop >> nth=1" },
        { "otherwise", "sheet", Section("Today otherwise") },
        { "overnight", "sheet", Section("Overnight") },
        { "did-it-run", "sheet", Section("Did it run?") },
        { "hose", "dry sheet", Section("Take hose and probe") },
        { "wet", "sheet", Section("Wet ground") },
        { "in-force", "sheet", Section("In force") },
        { "night", "dry sheet", Section("Does the night fit?") },
        { "tonight", "dry sheet", "figure.night >> nth=0" },
        { "moisture", "sheet", ".charts figure >> nth=2" },
        { "why", "sheet", ".why >> nth=0" },
        { "outlook", "sheet", Section("If nobody visits") },
        { "water", "sheet", Section("Water used") },
        { "season", "sheet", Section("The season so far") },
    };

    [Theory]
    [MemberData(nameof(Parts))]
    public async Task A_part_of_the_sheet(string name, string page, string part)
    {
        await using var shown = await chromium.OpenAsync(pages[page], 460, scale: Scale);
        await shown.Page.Locator(part).EvaluateAsync(Shortened);
        Keep(name, await shown.Page.Locator(part).ScreenshotAsync());
    }

    [Fact]
    public async Task The_sheet_on_a_phone_before_dawn()
    {
        await using var shown = await chromium.OpenAsync(pages["sheet"], 390, dark: true, scale: Scale);
        Keep("phone", await shown.Page.ScreenshotAsync());
    }

    [Fact]
    public async Task The_sheet_on_paper()
    {
        await using var shown = await chromium.OpenAsync(pages["sheet"], 700);
        await shown.Page.EmulateMediaAsync(new() { Media = Media.Print });
        await shown.Page.EvaluateAsync("document.body.style.padding = '20px'");
        var bottom = await shown.Page.EvaluateAsync<int>("Math.ceil(document.querySelector('.stop').closest('section').getBoundingClientRect().bottom) + 12");
        Keep("paper", await shown.Page.ScreenshotAsync(new() { FullPage = true, Clip = new() { X = 0, Y = 0, Width = 700, Height = bottom } }));
    }

    [Fact]
    public async Task All_sites_today()
    {
        await using var shown = await chromium.OpenAsync(pages["index"], 460, scale: Scale);
        Keep("index", await shown.Page.ScreenshotAsync());
    }

    private static string Section(string title) => $"section:has(> h2:has-text(\"{title}\"))";

    private static void Keep(string name, byte[] picture)
    {
        Assert.InRange(picture.Length, 2_000, LargestBytes);
        Assert.InRange(BinaryPrimitives.ReadInt32BigEndian(picture.AsSpan(16)), 300, 1000);
        if (Folder is not null)
        {
            File.WriteAllBytes(Path.Combine(Folder, name + ".png"), picture);
        }
    }
}
