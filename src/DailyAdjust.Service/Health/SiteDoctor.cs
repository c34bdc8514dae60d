using DailyAdjust.Core.Sites;
using DailyAdjust.Files;
using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Records;
using DailyAdjust.Service.Backups;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Health;

/// <summary>One site: its description, ledger, inbox, weather, sheet and mail. Reads beside a running service and holds nobody up.</summary>
/// <param name="folder">The site.</param>
/// <param name="options">The settings.</param>
/// <param name="now">UTC.</param>
/// <param name="thorough">Also unpacks every stored file and holds it against its hash.</param>
public sealed class SiteDoctor(SiteFolder folder, ServiceOptions options, DateTimeOffset now, bool thorough)
{
    /// <summary>What is told of refused files and of mail that never arrived.</summary>
    private const int DaysTold = 3;

    /// <summary>A file that was not taken after so many looks is not waiting for the next one.</summary>
    private const int LooksUntilStuck = 20;

    /// <summary>How far the clock may stand behind the ledger: a sheet is as of its hour, minutes before it.</summary>
    private static readonly TimeSpan ClockSlack = TimeSpan.FromHours(2);

    /// <summary>What one report hour takes at most on a machine that is fit for it.</summary>
    private static readonly TimeSpan LateAfter = TimeSpan.FromMinutes(10);

    public IEnumerable<Finding> Examine() => [Description(), .. OfInbox(), .. OfLedger()];

    private Finding Description()
    {
        var problems = DescriptionFiles.Of(folder).Reading.Problems;
        var errors = problems.Where(p => p.Severity == Severity.Error).ToList();
        var warnings = problems.Count - errors.Count;
        return errors.Count > 0
            ? Alarm("description", $"{errors[0].ToString()!.TrimEnd('.')}. {(errors.Count > 1 ? FormattableString.Invariant($"And {errors.Count - 1} more. ") : "")}The last good one holds until it is put right: `dailyadjust check`.")
            : Well("description", warnings == 0 ? "no error" : FormattableString.Invariant($"no error; {warnings} {(warnings == 1 ? "thing" : "things")} to look at in `dailyadjust check`"));
    }

    private IEnumerable<Finding> OfInbox()
    {
        if (!Directory.Exists(folder.Inbox))
        {
            yield return Alarm("inbox", $"{folder.Inbox} is gone: nothing can come in. Make it again, or mount the share.");
            yield break;
        }

        var stuck = Stuck();
        var refused = Refused();
        yield return stuck.Count > 0 ? new(Standing.Look, folder.Name, "inbox", FormattableString.Invariant($"{stuck.Count} {Files(stuck.Count)} waited for more than {LooksUntilStuck} looks, {stuck[0]} among them: is the service running, and is it a file that it may read?"))
            : refused.Count > 0 ? new(Standing.Look, folder.Name, "inbox", FormattableString.Invariant($"{refused.Count} {Files(refused.Count)} refused in the last {DaysTold} days: inbox/refused/{refused[0]} says why"))
            : Well("inbox", "nothing waits");
    }

    private static string Files(int count) => count == 1 ? "file" : "files";

    private List<string> Stuck()
    {
        var before = now.UtcDateTime - (LooksUntilStuck * TimeSpan.FromSeconds(options.PollSeconds)) - StillFiles.SettleTime;
        return [.. new DirectoryInfo(folder.Inbox).EnumerateFiles().Where(f => !f.Name.StartsWith('.') && f.LastWriteTimeUtc < before).Select(f => f.Name).Order(StringComparer.Ordinal)];
    }

    private List<string> Refused()
    {
        var after = now.UtcDateTime.AddDays(-DaysTold);
        return Directory.Exists(folder.Refused)
            ? [.. new DirectoryInfo(folder.Refused).EnumerateFiles("*" + Inbox.WhyEnding).Where(f => f.LastWriteTimeUtc > after).OrderByDescending(f => f.LastWriteTimeUtc).Select(f => f.Name)]
            : [];
    }

    private List<Finding> OfLedger()
    {
        try
        {
            using var site = OpenSite.Open(folder, LedgerMode.Read);
            return site.Ledger.InOneView(() => OfLedger(site).ToList());
        }
        catch (LedgerException missing) when (missing.Trouble == LedgerTrouble.Missing)
        {
            return [Finding.Look(folder.Name, "ledger", "there is none yet: the first morning or the first file taken in makes it")];
        }
        catch (Exception failure) when (failure is LedgerException or InvalidDataException)
        {
            return [Alarm("ledger", failure.Message)];
        }
    }

    private IEnumerable<Finding> OfLedger(OpenSite site)
    {
        yield return Whole(site);
        if (site.Versions.Count == 0)
        {
            yield return Alarm("sheet", "there can be none: the site's description was never read without errors");
            yield break;
        }

        yield return Clock(site);
        yield return Weather(site);
        yield return Sheet(site);
        yield return Backup(site);
        if (options.Mail is not null)
        {
            yield return Mail(site);
        }
    }

    private Finding Whole(OpenSite site)
    {
        var wrong = site.Ledger.IntegrityCheck(thorough);
        return wrong.Count > 0
            ? Alarm("ledger", FormattableString.Invariant($"it is damaged: {wrong[0]}{(wrong.Count > 1 ? $" (and {wrong.Count - 1} more)" : "")}. Stop the service and restore a backup: docs/operations.md"))
            : Well("ledger", FormattableString.Invariant($"whole, {new FileInfo(folder.LedgerFile).Length / 1e6:0.0} MB, {site.Ledger.Watermark} inputs"));
    }

    private Finding Clock(OpenSite site)
    {
        var clock = site.Newest.Clock;
        var newest = site.Ledger.Mornings.Last()?.AsOf;
        return newest - now > ClockSlack
            ? Alarm("clock", $"this machine's clock says {Local(clock, now)} and the newest sheet is as of {Local(clock, newest!.Value)}: set the clock, or mornings are missed until it has caught up")
            : Well("clock", $"{Local(clock, now)} at the site ({clock.ZoneId})");
    }

    private Finding Weather(OpenSite site)
    {
        if (MorningKnowledge.NewestReading(site, now) is not { } newest)
        {
            return Alarm("weather", "no reading has come in: sheets give no advice until one does");
        }

        var age = now - newest.End;
        var text = $"newest reading {Age.InWords(age)} old (station {newest.Station})";
        var most = site.Newest.Report.WeatherMaxAge;
        return age > most ? Alarm("weather", $"{text}, and {Age.InWords(most)} is the most that advice may rest on: sheets give none until files come in again")
            : age > most / 2 ? Finding.Look(folder.Name, "weather", $"{text}: it stops advice when it is {Age.InWords(most)} old. Look at the logger or its share")
            : Well("weather", text);
    }

    private Finding Sheet(OpenSite site)
    {
        var last = site.Ledger.Mornings.Last();
        var plan = MorningPlan.Of(site, now, TimeSpan.Zero);
        if (plan.Issue is { } due && now - due.Instant > LateAfter)
        {
            return Alarm("sheet", $"that of {Local(site.Newest.Clock, due.Instant)} is {Age.InWords(now - due.Instant)} late: is `dailyadjust serve` running? HOME/logs says what held it back");
        }

        return last switch
        {
            _ when plan.Missed.Count > 0 => Alarm("sheet", FormattableString.Invariant($"{plan.Missed.Count} {(plan.Missed.Count == 1 ? "morning was" : "mornings were")} slept over since {last!.Date:yyyy-MM-dd}: is `dailyadjust serve` running?")),
            null => Finding.Look(folder.Name, "sheet", "none yet"),
            { Step: MorningStep.Missed } => Finding.Look(folder.Name, "sheet", FormattableString.Invariant($"the morning of {last.Date:yyyy-MM-dd} was slept over; the next one is issued again")),
            _ => Well("sheet", FormattableString.Invariant($"{last.Date:yyyy-MM-dd}/{last.Issue}")),
        };
    }

    private Finding Backup(OpenSite site) =>
        SiteBackup.At(options) is null ? Finding.Look(folder.Name, "backup", "none is made: the settings say so (BackupAt)")
        : BackupNotices.Of(site, options, now) is [var late] ? Alarm("backup", late)
        : new SiteBackup(folder, options).Files.Newest(now) is { } newest ? Well("backup", $"{Age.InWords(now - newest.MadeAt)} old, {newest.Path}")
        : Well("backup", "none yet: `dailyadjust serve` makes one a day");

    private Finding Mail(OpenSite site)
    {
        var today = site.Newest.Clock.DateOf(now);
        var outbox = site.Ledger.Outbox;
        var lost = outbox.Between(today.AddDays(-DaysTold), today.AddDays(1)).Count(m => m.State is MessageState.Refused or MessageState.GivenUp or MessageState.Uncertain);
        var waiting = outbox.Open().Count(m => m.Tries > 0);
        return lost > 0 ? Alarm("mail", FormattableString.Invariant($"{lost} of the last {DaysTold} days did not arrive for sure: `dailyadjust mail` says which and why"))
            : waiting > 0 ? Finding.Look(folder.Name, "mail", FormattableString.Invariant($"{waiting} wait for another try: `dailyadjust mail` says why"))
            : Well("mail", "nothing waits");
    }

    private Finding Well(string subject, string sentence) => Finding.Well(folder.Name, subject, sentence);

    private Finding Alarm(string subject, string sentence) => Finding.Alarm(folder.Name, subject, sentence);

    private static string Local(SiteClock clock, DateTimeOffset instant) => FormattableString.Invariant($"{clock.ToLocal(instant):yyyy-MM-dd HH:mm}");
}
