using DailyAdjust.Core.Sites;
using DailyAdjust.Files;
using DailyAdjust.Files.Readings;
using DailyAdjust.Ledger;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Mail;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>`check`: what must and what would help; changes nothing.</summary>
internal static class CheckCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time) => new AppCommand(
        "check",
        "Validates a site: what must be put right, what would help, and whether it is ready. Changes nothing.",
        "Every problem comes with file, line, column and what to do. Exit code 2 while something must be put right.",
        "check",
        "check --site mill-creek")
        .Runs(global, time, context => Math.Max(context.Sites().Max(site => Run(context, site)), Mail(context)));

    private static int Run(CommandContext context, SiteFolder folder)
    {
        var reading = DescriptionFiles.Of(folder).Reading;
        var must = reading.Problems.Where(p => p.Severity == Severity.Error).Select(p => p.ToString()).ToList();
        List<string> help = [.. reading.Problems.Where(p => p.Severity == Severity.Warning).Select(p => p.ToString())];
        var weather = reading.Site is { } site ? WeatherSoFar(folder, site, help) : "";
        if (reading.Site is { } known)
        {
            help.AddRange(SiteAdvice.WouldHelp(known));
        }

        context.Out.WriteLine($"{folder.Name} ({folder.Path})");
        Section(context, "Must be put right", must);
        Section(context, "Would help", help);
        context.Out.WriteLine(must.Count > 0
            ? FormattableString.Invariant($"Not ready: {must.Count} {(must.Count == 1 ? "problem" : "problems")} must be put right.")
            : $"Ready: {Size(reading.Site!)}{weather}");
        return must.Count > 0 ? ExitCode.WrongInput : ExitCode.Done;
    }

    /// <summary>What the settings of mail point to; what is wrong with themselves stops every command.</summary>
    private static int Mail(CommandContext context)
    {
        if (context.Options.Mail is not { } mail)
        {
            return ExitCode.Done;
        }

        context.Out.WriteLine();
        context.Out.WriteLine(FormattableString.Invariant($"Mail by {mail.Server}:{mail.UsedPort} ({mail.Security}) to {mail.Recipients.Count} {(mail.Recipients.Count == 1 ? "recipient" : "recipients")}"));
        List<string> must = [];
        try
        {
            MailAccount.Open(mail, context.Home);
        }
        catch (WrongInputException wrong)
        {
            must.Add($"{wrong.Message} {wrong.Hint}");
        }

        Section(context, "Must be put right", must);
        Section(context, "Would help", [.. MailCheck.UnknownSites(mail, context.Home)]);
        context.Out.WriteLine(must.Count > 0 ? "Not ready: nothing is mailed until then." : "Ready to try: `dailyadjust mail --test ADDRESS` asks the server.");
        return must.Count > 0 ? ExitCode.WrongInput : ExitCode.Done;
    }

    private static void Section(CommandContext context, string title, List<string> lines)
    {
        if (lines.Count == 0)
        {
            return;
        }

        context.Out.WriteLine();
        context.Out.WriteLine($"{title}:");
        foreach (var line in lines)
        {
            context.Out.WriteLine($"  - {line}");
        }

        context.Out.WriteLine();
    }

    private static string Size(Site site) => FormattableString.Invariant(
        $"{site.Controllers.Count} controllers, {site.Controllers.Sum(c => c.Programs.Count)} programs, {site.Stations.Count} stations");

    private static string WeatherSoFar(SiteFolder folder, Site site, List<string> help)
    {
        var last = LastDay(folder);
        if (last is null && !Waiting(folder, site))
        {
            help.Add($"No weather has come in yet: drop files named {string.Join(" or ", site.Weather.Stations.Select(s => s.Files))} into {folder.Inbox}.");
        }

        return last is { } day ? FormattableString.Invariant($", weather through {day:yyyy-MM-dd}") : Waiting(folder, site) ? ", weather waits in the inbox" : ", no weather yet";
    }

    /// <summary>A file of a station lies in the inbox and waits for the next morning.</summary>
    private static bool Waiting(SiteFolder folder, Site site) => Directory.Exists(folder.Inbox)
        && Directory.EnumerateFiles(folder.Inbox).Any(file => ReadingsFile.SourceOf(Path.GetFileName(file), site.Weather.Sources) is not null);

    private static DateOnly? LastDay(SiteFolder folder)
    {
        try
        {
            using var open = OpenSite.Open(folder, LedgerMode.Read);
            return ReadingsBook.LastDay(open);
        }
        catch (LedgerException missing) when (missing.Trouble == LedgerTrouble.Missing)
        {
            return null;
        }
    }
}
