using System.Globalization;
using DailyAdjust.Files.Sites;
using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Inputs;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Hosting;
using DailyAdjust.Service.Mail;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Backups;

/// <summary>What a restore did.</summary>
/// <param name="Backup">The file.</param>
/// <param name="Newer">What the records that were there held beyond it; null = there were none.</param>
/// <param name="Brought">Whether that was brought along.</param>
/// <param name="Aside">The folder with the records that were there; null = there were none.</param>
/// <param name="PutBack">Files of inbox/taken that were put back into the inbox.</param>
/// <param name="NotPutBack">Files of inbox/taken that the records do not know and that stay where they are.</param>
/// <param name="SheetsOnPaper">Sheets that lie in reports/ and are in no record any more.</param>
public sealed record Restored(
    string Backup,
    NewerRecords? Newer,
    bool Brought,
    string? Aside,
    IReadOnlyList<string> PutBack,
    IReadOnlyList<string> NotPutBack,
    IReadOnlyList<(DateOnly Date, int Issue)> SheetsOnPaper);

/// <summary>Puts a backup in the place of a site's records while nobody else works with them.</summary>
public sealed class SiteRestore(SiteFolder site, HomeFolder home, TimeProvider time)
{
    /// <param name="backup">The file.</param>
    /// <param name="asItWas">Leave out what came after the backup.</param>
    /// <exception cref="WrongInputException">It is the backup of another site, or of another history of this one.</exception>
    /// <exception cref="IOException">The service runs, or mail is being sent; nothing was changed.</exception>
    /// <exception cref="LedgerException">The backup is damaged; or the disk or another process stands in the way. Nothing was changed.</exception>
    public Restored Run(string backup, bool asItWas)
    {
        Directory.CreateDirectory(site.Inbox);
        using var alone = HomeLock.Take(
            home, "Stop it (as `systemctl stop dailyadjust`), restore, and start it again: records are not replaced under a running service. Nothing was changed.", out var why)
            ?? throw new IOException($"{home.LockFile} cannot be written: {why}");
        using var sending = SendingLock.Take(site) ?? throw new IOException($"Another process is sending the mail of {site.Name}. Try again when it has finished; nothing was changed.");
        using var restore = LedgerRestore.Begin(site.LedgerFile, site.SetAside, SiteLedger.DefaultWait);
        restore.Copy(backup);
        RequireThisSite(restore.Copied, backup);
        var newer = restore.Newer(bring: !asItWas);
        if (newer is { History: LedgerHistory.Other } && !asItWas)
        {
            throw new WrongInputException(
                $"{backup} and the records of {site.Name} have gone different ways: each holds what the other does not. Nothing was changed.",
                "To go back to the backup and leave the rest with the records that are set aside, add --as-it-was.");
        }

        var brought = newer is { History: LedgerHistory.Same } && !asItWas;
        var onPaper = brought ? [] : RestoredRecords.Settle(restore.Copied, site, time.GetUtcNow());
        DescribeIfNeeded(restore.Copied);
        var unknown = TakenFiles.Unknown(site, restore.Copied);
        var aside = restore.Swap(time.GetUtcNow().UtcDateTime.ToString("yyyy-MM-dd'T'HHmmss'Z'", CultureInfo.InvariantCulture));
        return new(backup, newer, brought, aside, asItWas ? [] : TakenFiles.PutBack(site, unknown), asItWas ? unknown : [], onPaper);
    }

    /// <summary>A course's records never get another's: by the name of the course, which both know.</summary>
    private void RequireThisSite(SiteLedger copy, string backup)
    {
        if (copy.SiteVersions.History() is not [.., var last] || DescriptionFiles.Of(site).Reading.Site is not { } now)
        {
            return;
        }

        if (NameOf(last) is { } name && !string.Equals(name, now.Name, StringComparison.Ordinal))
        {
            throw new WrongInputException(
                $"{backup} is a backup of \"{name}\", and {site.SiteFile} describes \"{now.Name}\". Nothing was changed.",
                "Name the right --site. If the course was given another name since, put the old one into site.yaml, restore, and change it again.");
        }
    }

    private static string? NameOf(SiteText text) =>
        SiteReader.Read("site.yaml", DescriptionFiles.Decode(text.Site), "stations.csv", DescriptionFiles.Decode(text.Stations)).Site?.Name;

    /// <summary>On a new computer the description comes from the backup too.</summary>
    private void DescribeIfNeeded(SiteLedger copy)
    {
        if (File.Exists(site.SiteFile) || copy.SiteVersions.History() is not [.., var last])
        {
            return;
        }

        AtomicFile.Write(site.StationsFile, last.Stations);
        AtomicFile.Write(site.SiteFile, last.Site);
    }
}
