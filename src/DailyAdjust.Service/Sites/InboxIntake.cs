using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Health;
using DailyAdjust.Service.Home;
using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Sites;

/// <summary>Takes what lies in an inbox, file by file: one that cannot be used goes to refused/, and the others go on.</summary>
public sealed class InboxIntake(OpenSite site, Inbox inbox, ServiceOptions options, TimeProvider time, ILogger log)
{
    /// <returns>What went to taken/ or refused/ and leaves something to be said; it waits in the ledger for the sheet.</returns>
    public IReadOnlyList<string> TakeAll(InboxLook look, CancellationToken stop)
    {
        var notices = new List<string>();
        foreach (var file in look.Ready)
        {
            stop.ThrowIfCancellationRequested();
            if (Take(file) is { } notice)
            {
                notices.Add(notice);
            }
        }

        return notices;
    }

    private string? Take(InboxFile file)
    {
        try
        {
            using var content = RegularFile.Open(file.Path, options.LargestFileMegabytes * 1_000_000L, patience: SourceFolder.Patience);
            switch (content.Trouble)
            {
                case FileTrouble.Vanished:
                    return null;
                case FileTrouble.None when content.File!.IsLocked:
                    Leave(file, "Another program holds it locked.");
                    return null;
                case FileTrouble.None:
                    return Settle(file, new FileIntake(site, time.GetUtcNow()).Take(file.Name, content.File!), content.File!.Stood);
                case FileTrouble.NotRegular or FileTrouble.Denied:
                case FileTrouble.Link when !File.Exists(file.Path): // to a folder, or to nothing: there is no moving it
                    Leave(file, content.Why);
                    return null;
                default:
                    return Settle(file, IntakeReport.ForRefused(file.Name, $"{file.Name}: {content.Why}"), read: null);
            }
        }
        catch (FileNotFoundException)
        {
            // Somebody took it away meanwhile: what was read of it is kept.
            return null;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException && !DiskTrouble.IsFailed(failure))
        {
            // One file that cannot be read, or moved, holds up neither the others nor the sheet.
            Leave(file, failure.Message);
            return null;
        }
    }

    /// <summary>It is said on the log once, and on every sheet as long as it is so.</summary>
    private void Leave(InboxFile file, string why)
    {
        if (inbox.Leave(file, why) is { } news)
        {
            log.LogWarning("{Site}: {Notice}", site.Folder.Name, news);
        }
    }

    private string? Settle(InboxFile file, IntakeReport report, FileState? read)
    {
        string? notice = null;
        if (report.Refused)
        {
            if (inbox.MoveToRefused(file, report.Problems, read, name => Notice($"{file.Name} was refused: inbox/refused/{name}.why.txt says why.")) is null)
            {
                TellChanged(file);
                return null;
            }

            ServiceMetrics.FileRefused(site.Folder.Name);
            log.LogWarning("{Site}: {File} refused: {Why}", site.Folder.Name, file.Name, report.Problems[0]);
            return notice;
        }

        if (!inbox.IsLeft(file))
        {
            ServiceMetrics.FileTaken(site.Folder.Name);
            log.LogInformation("{Site}: {File} taken as {What}: {Counts}", site.Folder.Name, file.Name, report.What, report.Counts);
        }

        var moved = inbox.MoveToTaken(file, report.Problems, read, name =>
        {
            if (report.RowsRefused + report.RowsSetAside > 0)
            {
                Notice(FormattableString.Invariant($"{file.Name}: {report.Counts}; inbox/taken/{name}.why.txt lists them."));
            }
        });
        if (moved is null)
        {
            TellChanged(file);
            return null;
        }

        return notice;

        // Kept before the file goes: nobody would know of it after a crash.
        void Notice(string sentence) => site.Ledger.Notices.Add(notice = sentence);
    }

    private void TellChanged(InboxFile file) =>
        log.LogInformation("{Site}: {File} changed while it was being read: it is read again when it has come to rest", site.Folder.Name, file.Name);
}
