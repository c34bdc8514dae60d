using DailyAdjust.Ledger;
using DailyAdjust.Service.Backups;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Hosting;

/// <summary>
/// Makes each site's daily backup beside the morning's work, which never waits for it: asks the files at start and at every look what is due and not done. One that
/// failed is tried again an hour later, for a copy on a full disk is no small thing.
/// </summary>
public sealed class BackupWorker(SiteRunners sites, ServiceOptions options, TimeProvider time, ServiceFailure failed, ILogger<BackupWorker> log) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromHours(1);

    /// <summary>A share that went away may never answer.</summary>
    private static readonly TimeSpan PatienceForCopy = TimeSpan.FromMinutes(10);

    private readonly ToldOnce _told = new();

    /// <summary>When a site's backup failed, on the monotonic clock.</summary>
    private readonly Dictionary<string, long> _failedAt = new(StringComparer.Ordinal);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (SiteBackup.At(options) is not { } at)
        {
            log.LogWarning("No backups are made: BackupAt is {Never}", ServiceOptions.Never);
            return;
        }

        await failed.StopsAtAsync(Looks.RepeatAsync(options, time, stop => LookAsync(at, stop), stoppingToken)).ConfigureAwait(false);
    }

    private Task LookAsync(TimeOnly at, CancellationToken stop)
    {
        foreach (var site in sites.All())
        {
            stop.ThrowIfCancellationRequested();
            Look(site.Folder, at);
        }

        return Task.CompletedTask;
    }

    private void Look(SiteFolder site, TimeOnly at)
    {
        if (_failedAt.TryGetValue(site.Name, out var failedAt) && time.GetElapsedTime(failedAt) < Pause)
        {
            return;
        }

        try
        {
            var backup = new SiteBackup(site, options);
            var now = time.GetUtcNow();
            if (IsDue(site, backup, at, now))
            {
                var begun = time.GetTimestamp();
                var path = backup.Make(now);
                log.LogInformation("{Site}: backup {File} made in {Milliseconds:0} ms", site.Name, path, time.GetElapsedTime(begun).TotalMilliseconds);
            }

            if (Patient.Call(() => backup.CopyNewest(now), PatienceForCopy) is { } copy)
            {
                log.LogInformation("{Site}: backup copied to {File}", site.Name, copy);
            }

            _failedAt.Remove(site.Name);
            _told.Recovered(site.Name);
        }
        catch (LedgerException failure) when (failure.Trouble is LedgerTrouble.Busy or LedgerTrouble.Missing)
        {
            // Somebody is just making it, or replacing it.
            log.LogDebug("{Site}: {Failure}", site.Name, failure.Message);
        }
        catch (Exception failure) when (DiskTrouble.SpeaksForItself(failure) && !DiskTrouble.IsFailed(failure))
        {
            _failedAt[site.Name] = time.GetTimestamp();
            var words = DiskTrouble.InWords(failure);
            if (_told.IsNews(site.Name, words))
            {
                log.LogError("{Site}: no backup, tried again every hour: {Failure}", site.Name, words);
            }
        }
    }

    /// <summary>A morning that is just due goes first: for an hour at most, for one that cannot be issued must not keep backups from being made.</summary>
    private bool IsDue(SiteFolder folder, SiteBackup backup, TimeOnly at, DateTimeOffset now)
    {
        if (!File.Exists(folder.LedgerFile))
        {
            return false;
        }

        using var site = OpenSite.Open(folder, LedgerMode.Read);
        return site.Versions.Count > 0
            && backup.Files.IsDue(site.Newest.Clock, at, now)
            && !(MorningPlan.Of(site, now, TimeSpan.FromMinutes(options.WorkBeginsMinutesBefore)).Issue is { } morning && now < morning.Instant + Pause);
    }
}
