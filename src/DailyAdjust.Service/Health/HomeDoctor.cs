using DailyAdjust.Ledger;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Mail;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Health;

/// <summary>What belongs to no single site: rights, room, time-zone data, mail, the beat of the mornings.</summary>
/// <param name="home">The installation.</param>
/// <param name="options">Its settings; wrong ones stop every command before this.</param>
/// <param name="now">UTC.</param>
public sealed class HomeDoctor(HomeFolder home, ServiceOptions options, DateTimeOffset now)
{
    /// <summary>Below this much room a ledger cannot be relied on to grow through a day; bytes.</summary>
    private const long LeastRoom = 200_000_000;

    /// <summary>Below this much room somebody should tidy up; bytes.</summary>
    private const long LittleRoom = 2_000_000_000;

    /// <summary>Governments change clocks at short notice, and the data follows several times a year.</summary>
    private const int OldZonesYears = 2;

    /// <summary>A day and an hour: the mornings of a day on which clocks are set back lie 25 hours apart.</summary>
    private static readonly TimeSpan LongestBeat = TimeSpan.FromHours(26);

    public IEnumerable<Finding> Examine()
    {
        yield return Rights();
        yield return Room();
        if (!string.IsNullOrWhiteSpace(options.BackupFolder) && !Directory.Exists(options.BackupFolder))
        {
            yield return Finding.Alarm("", "disk", $"{options.BackupFolder}, for the copies of backups (BackupFolder), is not there: connect its disk or share");
        }

        yield return Zones();
        yield return Beat();
        foreach (var finding in OfMail())
        {
            yield return finding;
        }
    }

    private Finding Rights()
    {
        string[] folders = [home.Path, home.SitesFolder, home.LogsFolder, .. home.Sites().SelectMany(s => new[] { s.Path, s.Inbox, s.Reports })];
        foreach (var folder in folders.Where(Directory.Exists))
        {
            if (WritingTrial.WhatIsWrong(folder) is { } wrong)
            {
                return Finding.Alarm("", "rights", $"{wrong} Give the user that the service runs as the right to write there.");
            }
        }

        if (home.Sites().Select(s => s.LedgerFile).FirstOrDefault(file => File.Exists(file) && !OnDisk.MayWrite(file)) is { } ledger)
        {
            return Finding.Alarm("", "rights", $"No right to write {ledger}. Give the user that the service runs as the right to write it.");
        }

        return Finding.Well("", "rights", $"{home.Path} can be written as {Environment.UserName}");
    }

    private Finding Room()
    {
        var drive = new DriveInfo(home.Path);
        var free = drive.AvailableFreeSpace;
        var text = FormattableString.Invariant($"{free / 1e9:0.0} GB free of {drive.TotalSize / 1e9:0.0}");
        return free < LeastRoom ? Finding.Alarm("", "disk", $"{text}: the ledgers cannot grow. Make room on {drive.Name} now.")
            : free < LittleRoom ? Finding.Look("", "disk", $"{text}: make room on {drive.Name}")
            : Finding.Well("", "disk", text);
    }

    private Finding Zones()
    {
        var version = CalculationVersions.TimeZones;
        var isOld = version.Length > 4 && int.TryParse(version.AsSpan(0, 4), System.Globalization.CultureInfo.InvariantCulture, out var year) && now.Year - year >= OldZonesYears;
        return isOld
            ? Finding.Look("", "time zones", $"their data is of {version}: bring it up (Debian: apt-get install tzdata), or a report hour may be an hour off after a change of law")
            : Finding.Well("", "time zones", version);
    }

    private Finding Beat()
    {
        if (Heartbeat.Of(home) is not { } beat)
        {
            return Finding.Look("", "mornings", $"{Path.GetFileName(home.HeartbeatFile)} is not there yet: no morning was completed by this version. Is `dailyadjust serve` running?");
        }

        var text = FormattableString.Invariant($"all done {Age.InWords(now - beat)} ago");
        return now - beat > LongestBeat
            ? Finding.Alarm("", "mornings", $"{text}: since then some site has had no sheet. Is `dailyadjust serve` running? The lines below and HOME/logs say more.")
            : Finding.Well("", "mornings", text);
    }

    private IEnumerable<Finding> OfMail()
    {
        if (options.Mail is not { } mail)
        {
            yield break;
        }

        foreach (var unknown in MailCheck.UnknownSites(mail, home))
        {
            yield return Finding.Look("", "mail", unknown);
        }

        yield return Account(mail);
    }

    private Finding Account(MailOptions mail)
    {
        try
        {
            MailAccount.Open(mail, home);
            return Finding.Well("", "mail", FormattableString.Invariant($"by {mail.Server}:{mail.UsedPort}; `dailyadjust mail --test ADDRESS` asks the server"));
        }
        catch (WrongInputException wrong)
        {
            return Finding.Alarm("", "mail", $"{wrong.Message} {wrong.Hint}");
        }
    }
}
