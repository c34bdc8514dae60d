using System.Globalization;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;
using Serilog;
using Serilog.Core;
using Serilog.Events;
using Serilog.Formatting.Compact;

namespace DailyAdjust.Service.Hosting;

/// <summary>Daily files of one JSON line per event; the service speaks on the console too.</summary>
public static class LogSetup
{
    /// <summary>A file that is full gives way to another of its day.</summary>
    private const long LargestFile = 10_000_000;

    /// <summary>So many files more than one a day: at the defaults the logs of whatever happens fit 410 MB.</summary>
    private const int MoreFiles = 10;

    /// <param name="home">Knows where logs lie.</param>
    /// <param name="options">How long they stay, and from which level on.</param>
    /// <param name="console">Also on standard error, where a service manager reads it.</param>
    public static Logger Create(HomeFolder home, ServiceOptions options, bool console)
    {
        var level = Enum.Parse<LogEventLevel>(options.LogLevel);
        var setup = new LoggerConfiguration()
            .MinimumLevel.Is(level)
            .MinimumLevel.Override("Quartz", LogEventLevel.Warning)
            .MinimumLevel.Override("Microsoft", LogEventLevel.Warning)
            .WriteTo.File(
                new CompactJsonFormatter(),
                Path.Combine(home.LogsFolder, "dailyadjust-.json"),
                rollingInterval: RollingInterval.Day,
                retainedFileCountLimit: options.KeepLogsDays + MoreFiles,
                retainedFileTimeLimit: TimeSpan.FromDays(options.KeepLogsDays),
                fileSizeLimitBytes: LargestFile,
                rollOnFileSizeLimit: true,
                shared: true);
        if (console)
        {
            setup.WriteTo.Console(
                standardErrorFromLevel: LogEventLevel.Verbose,
                formatProvider: CultureInfo.InvariantCulture,
                outputTemplate: "{Timestamp:yyyy-MM-dd HH:mm:ss} {Level:u4} {Message:lj}{NewLine}{Exception}");
        }

        return setup.CreateLogger();
    }
}
