using System.CommandLine;
using System.Globalization;
using DailyAdjust.Service.Backups;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Printing;

namespace DailyAdjust.Service.Commands;

/// <summary>`restore`: a backup takes the place of a site's records.</summary>
internal static class RestoreCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var file = new Argument<string?>("FILE") { Description = "The backup. Without it the site's backups are listed.", Arity = ArgumentArity.ZeroOrOne };
        var asItWas = new Option<bool>("--as-it-was") { Description = "Goes back to the backup alone: what came after it is only named, and lies with the records that are set aside." };
        return new AppCommand(
            "restore",
            "Puts a backup in the place of a site's records; the service must be stopped for it.",
            "The records that were there are set aside, not deleted. What arrived or was issued after the backup is brought along from them where they can still be read;\nwhere not, files in inbox/taken that the backup does not know are put back into the inbox. `--as-it-was` leaves all of that out.\nWith a --site that is not there, the site is made from the backup. docs/operations.md says when to do what.",
            "restore",
            "restore sites/mill-creek/backups/mill-creek-2026-06-10T170000Z.db --site mill-creek")
        {
            file,
            asItWas,
        }.Runs(global, time, context => context.Parsed.GetValue(file) is { } path ? Restore(context, path, context.Parsed.GetValue(asItWas)) : List(context));
    }

    private static int Restore(CommandContext context, string path, bool asItWas)
    {
        var site = SiteOf(context);
        var restored = new SiteRestore(site, context.Home, context.Time).Run(Path.GetFullPath(path), asItWas);
        foreach (var line in RestoredText.Lines(site, restored))
        {
            context.Out.WriteLine(line);
        }

        return ExitCode.Done;
    }

    private static int List(CommandContext context)
    {
        foreach (var folder in context.Sites())
        {
            var all = new SiteBackup(folder, context.Options).Files.All();
            context.Out.WriteLine(all.Count == 0 ? $"{folder.Name}: no backups in {folder.Backups}" : $"{folder.Name}: backups in {folder.Backups}, the newest last");
            foreach (var backup in all)
            {
                context.Out.WriteLine(string.Create(
                    CultureInfo.InvariantCulture, $"  {Path.GetFileName(backup.Path)}  {backup.MadeAt.ToLocalTime():yyyy-MM-dd HH:mm}  {new FileInfo(backup.Path).Length / 1e6:0.0} MB"));
            }
        }

        return ExitCode.Done;
    }

    /// <summary>A named site need not be there yet: a new computer has nothing but the backup.</summary>
    private static SiteFolder SiteOf(CommandContext context)
    {
        if (context.SiteName is not { } name || context.Home.Sites().Any(s => string.Equals(s.Name, name, StringComparison.Ordinal)))
        {
            return context.OneSite();
        }

        return name.Length > 0 && name.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_')
            ? context.Home.Site(name)
            : throw new WrongInputException($"There is no site \"{name}\" in {context.Home.Path}.", "A new site's name has letters, digits, - and _ only.");
    }
}
