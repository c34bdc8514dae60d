using DailyAdjust.Core.Sites;
using DailyAdjust.Service.Fetching;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Hosting;
using DailyAdjust.Service.Sites;
using Serilog.Extensions.Logging;

namespace DailyAdjust.Service.Commands;

/// <summary>`weather pull`: asks the sources now.</summary>
internal static class PullCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time) => new AppCommand(
        "pull",
        "Asks every source with a `pull` now, and says what came of it.",
        "Takes all sites, or the one that --site names, as their site.yaml stands now. New files lie in the inbox; the service or\n`morning` takes them from there. The exit code is 1 if a source failed.",
        "weather pull",
        "weather pull --site mill-creek")
        .Runs(global, time, RunAsync);

    private static async Task<int> RunAsync(CommandContext context, CancellationToken stop)
    {
        await using var logger = LogSetup.Create(context.Home, context.Options, console: false);
        using var factory = new SerilogLoggerFactory(logger);
        var tools = new PullTools { Time = context.Time, Log = factory.CreateLogger(typeof(SitePulls).FullName!) };
        var code = ExitCode.Done;
        foreach (var folder in context.Sites())
        {
            var reading = DescriptionFiles.Of(folder).Reading;
            if (reading.Site is not { } site)
            {
                await context.Error.WriteLineAsync($"{folder.Name}: its description cannot be read: {reading.Problems[0]}").ConfigureAwait(false);
                code = ExitCode.WrongInput;
                continue;
            }

            code = Math.Max(code, await RunAsync(context, folder, site, tools, stop).ConfigureAwait(false));
        }

        return code;
    }

    private static async Task<int> RunAsync(CommandContext context, SiteFolder folder, Site site, PullTools tools, CancellationToken stop)
    {
        Directory.CreateDirectory(folder.Inbox);
        using var pulls = new SitePulls(folder, tools);
        var results = await pulls.NowAsync(site, most: null, stop).ConfigureAwait(false);
        if (results.Count == 0)
        {
            await context.Out.WriteLineAsync($"{folder.Name}: no source of its weather has a pull.").ConfigureAwait(false);
        }

        foreach (var result in results)
        {
            var failed = result.Outcome == PullOutcome.Failed ? "failed: " : "";
            var where = result.Address.Length > 0 ? result.Address + ": " : "";
            await context.Out.WriteLineAsync($"{folder.Name} {result.Source}: {where}{failed}{result.What}").ConfigureAwait(false);
        }

        return results.Any(r => r.Outcome == PullOutcome.Failed) ? ExitCode.Failed : ExitCode.Done;
    }
}
