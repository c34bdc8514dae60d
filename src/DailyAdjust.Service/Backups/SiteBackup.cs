using System.Globalization;
using DailyAdjust.Ledger;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Backups;

/// <summary>
/// Makes the backups of one site: a whole copy of its ledger, held against it by its rows and checked, in `backups/` of the site's folder, and a copy of that in the
/// folder that the settings name. Only reads the ledger: no morning waits for it.
/// </summary>
public sealed class SiteBackup(SiteFolder site, ServiceOptions options)
{
    /// <summary>The log beside the ledger may have grown while the copy was read; beyond this it is emptied.</summary>
    private const long LongLog = 16 << 20;

    /// <summary>Room that a backup leaves for the ledger itself.</summary>
    private const long RoomLeft = 50_000_000;

    public BackupFiles Files { get; } = new(site.Backups, site.Name);

    /// <summary>Where copies of the backups go; null = nowhere.</summary>
    public BackupFiles? OtherFiles { get; } = OtherFolder(site, options) is { } other ? new(other, site.Name) : null;

    /// <summary>Null = the settings name no hour.</summary>
    public static TimeOnly? At(ServiceOptions options) =>
        options.BackupAt is ServiceOptions.Never ? null : TimeOnly.ParseExact(options.BackupAt, "HH:mm", CultureInfo.InvariantCulture);

    /// <summary>Makes one now, and removes those that were kept long enough.</summary>
    /// <returns>Its path.</returns>
    /// <exception cref="LedgerException">Missing, Full, Denied, Io; Corrupt where the ledger is damaged: no backup is then removed.</exception>
    public string Make(DateTimeOffset now)
    {
        Directory.CreateDirectory(site.Backups);
        RequireRoom(site.Backups);
        var path = FreePath(now);
        using (var ledger = SiteLedger.Open(site.LedgerFile, LedgerMode.Read))
        {
            ledger.Backup(path);
        }

        ShortenLog();
        Files.Tidy(now, TimeSpan.FromDays(options.KeepBackupsDays));
        return path;
    }

    /// <summary>Copies the newest backup into the folder that the settings name, if it is not there yet.</summary>
    /// <returns>The copy; null = nothing was to be done.</returns>
    /// <exception cref="IOException">The folder is gone, full, or keeps something else than it was given.</exception>
    public string? CopyNewest(DateTimeOffset now)
    {
        if (OtherFolder(site, options) is not { } folder || OtherFiles is not { } others || Files.Newest(now) is not { } newest)
        {
            return null;
        }

        var target = Path.Combine(folder, Path.GetFileName(newest.Path));
        if (File.Exists(target))
        {
            return null;
        }

        if (!Directory.Exists(options.BackupFolder))
        {
            // Never made here: where a disk is not plugged in, its folder would be made on the wrong one.
            throw new DirectoryNotFoundException($"The folder {options.BackupFolder} for copies of backups is not there. Is its disk or share connected?");
        }

        Directory.CreateDirectory(folder);
        BackupCopy.Make(newest.Path, target);
        others.Tidy(now, TimeSpan.FromDays(options.KeepBackupsDays));
        return target;
    }

    private static string? OtherFolder(SiteFolder site, ServiceOptions options) =>
        string.IsNullOrWhiteSpace(options.BackupFolder) ? null : Path.Combine(options.BackupFolder, site.Name);

    /// <summary>Two within one second are a second apart in their names.</summary>
    private string FreePath(DateTimeOffset now)
    {
        while (File.Exists(Files.PathAt(now)))
        {
            now = now.AddSeconds(1);
        }

        return Files.PathAt(now);
    }

    /// <summary>A copy must not take the last room, which the ledger itself needs.</summary>
    private void RequireRoom(string folder)
    {
        var ledger = new FileInfo(site.LedgerFile);
        var needed = (ledger.Exists ? ledger.Length : 0) + RoomLeft;
        var free = new DriveInfo(OperatingSystem.IsWindows() ? Path.GetPathRoot(folder)! : folder).AvailableFreeSpace;
        if (free < needed)
        {
            throw new LedgerException(LedgerTrouble.Full, FormattableString.Invariant(
                $"No backup of {site.Name}: {free / 1_000_000} MB are free in {folder}, and with room for the records themselves {needed / 1_000_000} MB are needed. Free some space."));
        }
    }

    private void ShortenLog()
    {
        var log = new FileInfo(site.LedgerFile + "-wal");
        if (!log.Exists || log.Length <= LongLog)
        {
            return;
        }

        try
        {
            using var ledger = SiteLedger.Open(site.LedgerFile, LedgerMode.Write, TimeSpan.Zero);
            ledger.ShortenLog();
        }
        catch (LedgerException busy) when (busy.Trouble == LedgerTrouble.Busy)
        {
            // Whoever writes just now shortens it.
        }
    }
}
