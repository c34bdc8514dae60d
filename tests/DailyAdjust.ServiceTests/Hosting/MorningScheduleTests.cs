using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Hosting;
using DailyAdjust.Service.Sites;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Quartz;
using Xunit;

namespace DailyAdjust.ServiceTests.Hosting;

/// <summary>The schedule follows the site's description, in the site's zone.</summary>
public sealed class MorningScheduleTests : IDisposable
{
    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public async Task One_trigger_per_report_time_ten_minutes_before_it_on_the_sites_clock()
    {
        var site = ExampleSite.TakenIn(_home);
        var options = new ServiceOptions();
        await using var services = new ServiceCollection().AddLogging().AddQuartz(_ => { }).BuildServiceProvider();
        var factory = services.GetRequiredService<ISchedulerFactory>();
        var schedule = new MorningSchedule(factory, options, NullLogger<MorningSchedule>.Instance);
        using var runner = new SiteRunner(site, options, TimeProvider.System, NullLogger.Instance);
        await schedule.FollowAsync(runner, CancellationToken.None);
        await schedule.FollowAsync(runner, CancellationToken.None);

        var scheduler = await factory.GetScheduler();
        var trigger = Assert.Single(await scheduler.GetTriggersOfJob(new JobKey(ExampleSite.Name)));
        var winter = new DateTimeOffset(2026, 12, 1, 0, 0, 0, TimeSpan.Zero);
        var summer = new DateTimeOffset(2027, 7, 1, 0, 0, 0, TimeSpan.Zero);
        Assert.Equal(new DateTimeOffset(2026, 12, 1, 10, 50, 0, TimeSpan.Zero), trigger.GetFireTimeAfter(winter)?.ToUniversalTime());
        Assert.Equal(new DateTimeOffset(2027, 7, 1, 9, 50, 0, TimeSpan.Zero), trigger.GetFireTimeAfter(summer)?.ToUniversalTime());
    }
}
