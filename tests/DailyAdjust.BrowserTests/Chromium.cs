using Microsoft.Playwright;
using Xunit;

namespace DailyAdjust.BrowserTests;

/// <summary>The installed Chromium, started once for all tests. Without one they are skipped by name.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private static readonly string[] Flags =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    private static readonly string? Program = new[] { "/usr/bin/chromium", "/usr/bin/chromium-browser" }.FirstOrDefault(File.Exists);

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public async ValueTask InitializeAsync()
    {
        if (Program is not null)
        {
            _playwright = await Playwright.CreateAsync();
            _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = Program, Args = Flags });
        }
    }

    /// <summary>A page of a file, in a context of its own.</summary>
    /// <param name="file">Its path.</param>
    /// <param name="width">CSS pixels.</param>
    /// <param name="dark">What the reader's system prefers.</param>
    /// <param name="scale">Pixels of a picture to a CSS pixel.</param>
    public async Task<ShownPage> OpenAsync(string file, int width = 1280, bool dark = false, float scale = 1)
    {
        Assert.SkipWhen(_browser is null, "needs chromium (Debian: apt-get install chromium)");
        var context = await _browser.NewContextAsync(new() { ViewportSize = new() { Width = width, Height = 800 }, DeviceScaleFactor = scale, ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light });
        var page = await context.NewPageAsync();
        await page.GotoAsync(new Uri(file).AbsoluteUri);
        return new ShownPage(page);
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
    }
}

/// <summary>A page that goes with its context.</summary>
public sealed class ShownPage(IPage page) : IAsyncDisposable
{
    public IPage Page { get; } = page;

    public async ValueTask DisposeAsync() => await Page.Context.CloseAsync();
}
