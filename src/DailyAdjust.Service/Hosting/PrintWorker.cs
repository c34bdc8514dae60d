using DailyAdjust.Reports;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Paper;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Hosting;

/// <summary>
/// Prints new sheets as report.pdf beside the morning's work, which never waits for it: one page at a time, each tried once. What goes wrong is a line of the log and nothing else.
/// </summary>
public sealed class PrintWorker(SiteRunners sites, ServiceOptions options, TimeProvider time, ILogger<PrintWorker> log) : BackgroundService
{
    /// <summary>A sheet that was written longer ago was there before the browser was.</summary>
    private static readonly TimeSpan New = TimeSpan.FromHours(24);

    /// <summary>By folder, when the page was written that was tried.</summary>
    private readonly Dictionary<string, DateTime> _tried = new(StringComparer.Ordinal);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (Browser.Find(options.Pdf) is not { } browser)
        {
            TellWithout();
            return;
        }

        log.LogInformation("Sheets are printed as {File} by {Browser}", ReportFiles.Print, browser);
        var print = new PagePrint(browser, TimeSpan.FromSeconds(options.PdfSeconds));
        await Looks.RepeatAsync(options, time, stop => LookAsync(print, stop), stoppingToken).ConfigureAwait(false);
    }

    private void TellWithout()
    {
        if (options.Pdf is ServiceOptions.Auto or ServiceOptions.Never)
        {
            log.LogDebug("No {File} is made: {Why}", ReportFiles.Print, options.Pdf is ServiceOptions.Never ? "the settings say so" : "no browser was found");
        }
        else
        {
            log.LogWarning("No {File} is made: {Browser} is not there", ReportFiles.Print, options.Pdf);
        }
    }

    private async Task LookAsync(PagePrint print, CancellationToken stop)
    {
        foreach (var site in sites.All().Select(s => s.Folder))
        {
            try
            {
                await LookAsync(site, print, stop).ConfigureAwait(false);
            }
            catch (Exception failure) when (!stop.IsCancellationRequested)
            {
                log.LogWarning("{Site}: no {File}: {Failure}", site.Name, ReportFiles.Print, failure.Message);
            }
        }
    }

    private async Task LookAsync(SiteFolder site, PagePrint print, CancellationToken stop)
    {
        if (ReportFolders.WithFile(site, ReportFiles.Html) is not [.., var newest] || site.ReportFolder(newest) is not { } folder || !SheetPrint.IsDue(folder))
        {
            return;
        }

        var written = File.GetLastWriteTimeUtc(Path.Combine(folder, ReportFiles.Html));
        if (time.GetUtcNow().UtcDateTime - written > New || (_tried.TryGetValue(folder, out var before) && before == written))
        {
            return;
        }

        _tried[folder] = written;
        if (await SheetPrint.MakeAsync(folder, print, stop).ConfigureAwait(false))
        {
            log.LogInformation("{Site}: sheet of {Date:yyyy-MM-dd} printed as {File}", site.Name, newest, ReportFiles.Print);
        }
    }
}
