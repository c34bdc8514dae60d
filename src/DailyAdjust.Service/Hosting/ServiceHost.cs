using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Health;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Hosting.Systemd;
using Microsoft.Extensions.Logging;
using Quartz;
using Serilog;

namespace DailyAdjust.Service.Hosting;

/// <summary>Puts the background worker together.</summary>
public static class ServiceHost
{
    /// <returns>The exit code: 0 only when it was asked to stop.</returns>
    public static async Task<int> RunAsync(HomeFolder home, string? onlySite, ServiceOptions options, TimeProvider time, CancellationToken stop)
    {
        Directory.CreateDirectory(home.SitesFolder);
        using var alone = HomeLock.Take(home, "A second one is not started: stop that one first, or name another home with --home.", out var notLocked);
        await using var logger = LogSetup.Create(home, options, console: true);

        // Without the defaults: they would read every environment variable of the machine into the settings.
        var builder = new HostApplicationBuilder(new HostApplicationBuilderSettings { DisableDefaults = true, ApplicationName = "dailyadjust" });
        builder.Services.AddSerilog(logger, dispose: false);
        builder.Services.AddSystemd();
        builder.Services.AddWindowsService(service => service.ServiceName = "DailyAdjust");
        builder.Services.AddSingleton(time);
        builder.Services.AddSingleton(options);
        builder.Services.AddSingleton(home);
        builder.Services.AddSingleton(services => new SiteRunners(
            home, options, time, services.GetRequiredService<ILogger<SiteRunner>>())
        { Only = onlySite });
        builder.Services.AddSingleton(services => new HomeIndex(home, services.GetRequiredService<ILogger<HomeIndex>>()));
        builder.Services.AddSingleton<MorningBeat>();
        builder.Services.AddSingleton(services => new Watchdog(services.GetService<ISystemdNotifier>(), time));
        builder.Services.AddSingleton<SiteWork>();
        builder.Services.AddSingleton<MorningSchedule>();
        builder.Services.AddSingleton<ServiceFailure>();
        builder.Services.AddQuartz(_ => { });
        builder.Services.AddQuartzHostedService(quartz => quartz.WaitForJobsToComplete = true);
        builder.Services.AddHostedService<PollWorker>();
        builder.Services.AddHostedService<MailWorker>();
        builder.Services.AddHostedService<PingWorker>();
        builder.Services.AddHostedService<PrintWorker>();
        builder.Services.AddHostedService<BackupWorker>();

        using var host = builder.Build();
        var failure = host.Services.GetRequiredService<ServiceFailure>();
        var log = host.Services.GetRequiredService<ILogger<PollWorker>>();
        log.LogInformation("Started on {Home}", home.Path);
        if (notLocked is not null)
        {
            log.LogWarning("A second service could not be kept away: {Why}", notLocked);
        }

        await host.RunAsync(stop).ConfigureAwait(false);
        log.LogInformation("Stopped");
        return failure.What is null ? ExitCode.Done : ExitCode.Failed;
    }
}
