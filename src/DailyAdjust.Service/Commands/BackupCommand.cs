using System.CommandLine;
using DailyAdjust.Ledger;
using DailyAdjust.Service.Backups;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Commands;

/// <summary>`backup`: a whole, checked copy of a site's records now.</summary>
internal static class BackupCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var site = new Argument<string?>("SITE") { Description = "The site, by the name of its folder; without it every site, or the one that --site names.", Arity = ArgumentArity.ZeroOrOne };
        return new AppCommand(
            "backup",
            "Makes a whole, checked copy of a site's records now, beside a running service too.",
            "A backup is one file in sites/SITE/backups: weather files as they came, logbook, descriptions, and every sheet that was issued. It is held against the records by its rows and checked\nbefore it gets its name. `serve` makes one a day by itself. Settings, reports and files in the inbox are not in it. docs/operations.md says more.",
            "backup",
            "backup mill-creek --home /srv/dailyadjust")
        {
            site,
        }.Runs(global, time, context => Run(context with { SiteName = context.Parsed.GetValue(site) ?? context.SiteName }));
    }

    private static int Run(CommandContext context)
    {
        if (context.SiteName is null && context.Home.Sites().Count == 0)
        {
            context.Out.WriteLine($"There is no site in {context.Home.Path}: nothing to back up.");
            return ExitCode.Done;
        }

        // Every course for itself: what is wrong with one keeps no other from its backup.
        return context.Sites().Aggregate(ExitCode.Done, (code, folder) => Math.Max(code, Run(context, folder)));
    }

    private static int Run(CommandContext context, SiteFolder folder)
    {
        try
        {
            if (!SiteLedger.IsThere(folder.LedgerFile))
            {
                context.Out.WriteLine($"{folder.Name}: nothing has been taken in yet, so there is nothing to back up.");
                return ExitCode.Done;
            }

            var backup = new SiteBackup(folder, context.Options);
            var now = context.Time.GetUtcNow();
            var path = backup.Make(now);
            context.Out.WriteLine(FormattableString.Invariant($"{folder.Name}: {path} ({new FileInfo(path).Length / 1e6:0.0} MB), checked."));
            // The name of a second backup within a second lies ahead of now.
            if (backup.CopyNewest(now.AddMinutes(1)) is { } copy)
            {
                context.Out.WriteLine($"{folder.Name}: copied to {copy}");
            }

            return ExitCode.Done;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or LedgerException)
        {
            context.Error.WriteLine($"{folder.Name}: failed: {failure.Message}");
            return ExitCode.Failed;
        }
    }
}
