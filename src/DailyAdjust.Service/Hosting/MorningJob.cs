using Quartz;

namespace DailyAdjust.Service.Hosting;

/// <summary>A report time has come: look at its site now.</summary>
public sealed class MorningJob(SiteRunners sites, SiteWork work) : IJob
{
    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken = default)
    {
        var name = context.MergedJobDataMap.GetString(MorningSchedule.SiteKey);
        foreach (var site in sites.All().Where(s => string.Equals(s.Folder.Name, name, StringComparison.Ordinal)))
        {
            await work.RunAsync(site, cancellationToken).ConfigureAwait(false);
        }
    }
}
