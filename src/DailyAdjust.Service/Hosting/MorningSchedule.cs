using System.Collections.Concurrent;
using System.Globalization;
using DailyAdjust.Ledger;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;
using Microsoft.Extensions.Logging;
using Quartz;

namespace DailyAdjust.Service.Hosting;

/// <summary>One trigger per site and report time, in the site's zone; it follows the site's description.</summary>
public sealed class MorningSchedule(ISchedulerFactory factory, ServiceOptions options, ILogger<MorningSchedule> log)
{
    /// <summary>Key of the site's name in a job.</summary>
    internal const string SiteKey = "site";

    private readonly ConcurrentDictionary<string, string> _planned = new(StringComparer.Ordinal);

    /// <summary>Brings the site's triggers up to its description.</summary>
    public async Task FollowAsync(SiteRunner runner, CancellationToken stop)
    {
        var name = runner.Folder.Name;
        if (TimesOf(runner) is not { } times || (_planned.TryGetValue(name, out var before) && string.Equals(before, times.Text, StringComparison.Ordinal)))
        {
            return;
        }

        var scheduler = await factory.GetScheduler(stop).ConfigureAwait(false);
        var job = JobBuilder.Create<MorningJob>().WithIdentity(name).UsingJobData(SiteKey, name).Build();
        await scheduler.DeleteJob(job.Key, stop).ConfigureAwait(false);
        var triggers = times.Crons.Select(cron => TriggerBuilder.Create()
            .WithIdentity($"{name} {cron}")
            .ForJob(job)
            .WithCronSchedule(cron, schedule => schedule.InTimeZone(times.Zone))
            .Build()).ToList();
        await scheduler.ScheduleJob(job, triggers, new ScheduleJobOptions { Replace = true }, stop).ConfigureAwait(false);
        _planned[name] = times.Text;
        log.LogInformation("{Site}: work begins at {Times}", name, times.Text);
    }

    private (TimeZoneInfo Zone, IReadOnlyList<string> Crons, string Text)? TimesOf(SiteRunner runner)
    {
        if (!File.Exists(runner.Folder.LedgerFile))
        {
            return null;
        }

        try
        {
            using var open = OpenSite.Open(runner.Folder, LedgerMode.Read);
            if (open.Versions.Count == 0)
            {
                return null;
            }

            var zone = TimeZoneInfo.FindSystemTimeZoneById(open.Newest.Clock.ZoneId);
            var times = open.Newest.Report.At.Select(at => at.AddMinutes(-options.WorkBeginsMinutesBefore)).ToList();
            var text = string.Join(", ", times.Select(at => at.ToString("HH:mm", CultureInfo.InvariantCulture))) + " " + zone.Id;
            return (zone, [.. times.Select(at => string.Create(CultureInfo.InvariantCulture, $"{at.Second} {at.Minute} {at.Hour} ? * *"))], text);
        }
        catch (Exception failure) when (!DiskTrouble.IsFailed(failure))
        {
            // Whoever looks at the site tells it; the timer carries the morning meanwhile.
            return null;
        }
    }
}
