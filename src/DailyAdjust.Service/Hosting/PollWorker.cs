using DailyAdjust.Service.Configuration;
using Microsoft.Extensions.Hosting;

namespace DailyAdjust.Service.Hosting;

/// <summary>
/// Looks at every site, as many at a time as there are processors, again and again on a monotonic timer: what is due and not done, what lies in the inbox. The schedule
/// only makes a morning punctual; this makes sure that none is missed, whatever the clock does.
/// </summary>
public sealed class PollWorker(SiteRunners sites, SiteWork work, MorningSchedule schedule, Watchdog watchdog, ServiceOptions options, TimeProvider time, ServiceFailure failure) : BackgroundService
{
    protected override Task ExecuteAsync(CancellationToken stoppingToken) => failure.StopsAtAsync(Looks.RepeatAsync(options, time, LookAsync, stoppingToken));

    private async Task LookAsync(CancellationToken stop)
    {
        var processors = new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = stop };
        await Parallel.ForEachAsync(sites.All(), processors, async (site, cancelled) =>
        {
            await work.RunAsync(site, cancelled).ConfigureAwait(false);
            await schedule.FollowAsync(site, cancelled).ConfigureAwait(false);
            watchdog.Beat();
        }).ConfigureAwait(false);
        work.EndLook();
        watchdog.Beat();
    }
}
