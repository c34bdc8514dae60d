using System.Diagnostics;
using System.Runtime.ExceptionServices;
using DailyAdjust.Ledger;
using DailyAdjust.Service.Health;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;
using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Hosting;

/// <summary>
/// Runs one site, and decides in one place what a failure means: a full or closed disk and a busy ledger hold this site until the
/// next look; a failing disk stops the service; whatever else goes wrong at one site stays with that site.
/// </summary>
/// <param name="index">Follows every sheet.</param>
/// <param name="beat">Says when all of them are done.</param>
/// <param name="log">Tells what failed, once.</param>
public sealed class SiteWork(HomeIndex index, MorningBeat beat, ILogger<SiteWork> log)
{
    private readonly ToldOnce _told = new();
    private readonly GatheredWork _after = new(() =>
    {
        index.Write();
        beat.Beat();
    });

    private volatile bool _hasLooked;
    private volatile Exception? _failed;

    /// <summary>All sites were looked at: what could not follow every sheet at once is done now.</summary>
    /// <exception cref="DiskFailedException">The disk failed: nothing more may be written.</exception>
    public void EndLook() => _after.DoDue();

    /// <exception cref="LedgerException">The disk failed: nothing more may be written.</exception>
    /// <exception cref="DiskFailedException">The same.</exception>
    public async Task RunAsync(SiteRunner runner, CancellationToken stop)
    {
        if (_failed is { } before)
        {
            ExceptionDispatchInfo.Throw(before);
        }

        var site = runner.Folder.Name;
        var begun = Stopwatch.GetTimestamp();
        try
        {
            if (await runner.RunAsync(stop).ConfigureAwait(false) || !_hasLooked)
            {
                // After the first look too: a crash may have come between a sheet and the page that leads to it.
                _hasLooked = true;
                _after.Ask();
            }

            ServiceMetrics.Looked(site, Stopwatch.GetElapsedTime(begun));
            if (_told.Recovered(site))
            {
                log.LogInformation("{Site}: works again", site);
            }
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            throw;
        }
        catch (Exception failure) when (DiskTrouble.IsFailed(failure))
        {
            // Whoever asked, the schedule or the timer: the timer's next look ends the service.
            _failed = failure;
            log.LogCritical(failure, "{Site}: the disk failed, the service stops", site);
            throw;
        }
        catch (LedgerException failure) when (failure.Trouble == LedgerTrouble.Busy)
        {
            log.LogDebug("{Site}: {Failure}", site, failure.Message);
        }
        catch (Exception failure)
        {
            // One site's failure does not stop the others; it is tried again at every look and told when it changes. What the
            // ledger says of the disk stands for itself; anything else comes with its trace.
            ServiceMetrics.LookFailed(site);
            var words = DiskTrouble.InWords(failure);
            runner.HoldBack(words);
            if (_told.IsNews(site, words))
            {
                log.LogError(DiskTrouble.SpeaksForItself(failure) ? null : failure, "{Site}: held back, tried again at every look: {Failure}", site, words);
            }
        }
    }
}
