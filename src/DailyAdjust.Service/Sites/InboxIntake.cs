using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;
using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Sites;

/// <summary>Takes what lies in an inbox, file by file: one that cannot be used goes to refused/, and the others go on.</summary>
public sealed class InboxIntake(OpenSite site, Inbox inbox, ServiceOptions options, TimeProvider time, ILogger log)
{
    /// <returns>What the sheet has to say about it; what a file's going to taken/ or refused/ leaves to be said waits in the ledger too.</returns>
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
        using var content = RegularFile.Open(file.Path, options.LargestFileMegabytes * 1_000_000L);
        switch (content.Trouble)
        {
            case FileTrouble.None:
                return Settle(file, new FileIntake(site, time.GetUtcNow()).Take(file.Name, content.File!));
            case FileTrouble.Vanished:
                return null;
            case FileTrouble.NotRegular or FileTrouble.Denied:
                if (inbox.Ignore(file, content.Why) is { } notice)
                {
                    log.LogWarning("{Site}: {Notice}", site.Folder.Name, notice);
                    return content.Trouble == FileTrouble.Denied ? notice : null;
                }

                return null;
            default:
                return Settle(file, IntakeReport.ForRefused(file.Name, $"{file.Name}: {content.Why}"));
        }
    }

    private string? Settle(InboxFile file, IntakeReport report)
    {
        string? notice = null;
        if (report.Refused)
        {
            inbox.MoveToRefused(file, report.Problems, name => Notice($"{file.Name} was refused: inbox/refused/{name}.why.txt says why."));
            log.LogWarning("{Site}: {File} refused: {Why}", site.Folder.Name, file.Name, report.Problems[0]);
            return notice;
        }

        inbox.MoveToTaken(file, report.Problems, name =>
        {
            if (report.RowsRefused + report.RowsSetAside > 0)
            {
                Notice(FormattableString.Invariant($"{file.Name}: {report.Counts}; inbox/taken/{name}.why.txt lists them."));
            }
        });
        log.LogInformation("{Site}: {File} taken as {What}: {Counts}", site.Folder.Name, file.Name, report.What, report.Counts);
        return notice;

        // Kept before the file goes: nobody would know of it after a crash.
        void Notice(string sentence) => site.Ledger.Notices.Add(notice = sentence);
    }
}
