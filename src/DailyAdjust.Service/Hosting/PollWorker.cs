using DailyAdjust.Service.Configuration;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Hosting;

/// <summary>
/// Looks at every site in turn, again and again on a monotonic timer: what is due and not done, what lies in the inbox. The schedule
/// only makes a morning punctual; this makes sure that none is missed, whatever the clock does.
/// </summary>
public sealed class PollWorker(
    SiteRunners sites, SiteWork work, MorningSchedule schedule, Watchdog watchdog, ServiceOptions options, TimeProvider time, IHostApplicationLifetime host, ILogger<PollWorker> log)
    : BackgroundService
{
    /// <summary>Why the worker ended by itself; null = it was stopped.</summary>
    public Exception? Failure { get; private set; }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        try
        {
            await Looks.RepeatAsync(options, time, LookAsync, stoppingToken).ConfigureAwait(false);
        }
        catch (Exception failure)
        {
            // The host would end with exit code 0 after a failed worker: the code is set from here.
            Failure = failure;
            log.LogCritical(failure, "The service stops: {Failure}", failure.Message);
            host.StopApplication();
        }
    }

    private async Task LookAsync(CancellationToken stop)
    {
        foreach (var site in sites.All())
        {
            await work.RunAsync(site, stop).ConfigureAwait(false);
            await schedule.FollowAsync(site, stop).ConfigureAwait(false);
            watchdog.Beat();
        }

        watchdog.Beat();
    }
}
