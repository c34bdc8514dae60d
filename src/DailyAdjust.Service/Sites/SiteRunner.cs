using DailyAdjust.Core.Logbook;
using DailyAdjust.Ledger;
using DailyAdjust.Service.Backups;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Fetching;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Mail;
using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Sites;

/// <summary>
/// One site under the running service: takes what lies in the inbox, and issues what is due and not done. May be asked at any time;
/// the ledger knows what is done.
/// </summary>
public sealed class SiteRunner(SiteFolder folder, ServiceOptions options, TimeProvider time, ILogger log) : IDisposable
{
    private readonly Inbox _inbox = new(folder, time);
    private readonly InboxAlarm _inboxAlarm = new(folder, log);
    private readonly ClockDoubt _clockDoubt = new(folder, log);
    private readonly SiteFolders _folders = new(folder, options, time, log);
    private readonly SitePulls _pulls = new(folder, new PullTools { Time = time, Log = log });
    private (ReportTime Due, long Since)? _waits;
    private readonly SemaphoreSlim _oneAtATime = new(1, 1);
    private readonly List<string> _notices = [];
    private (long Watermark, ReportTime Due) _looked = (-1, default);
    private bool _isChecked;
    private (DateTimeOffset Since, string Why)? _held;
    private (string? Sha, string? Why) _badEdit;

    public SiteFolder Folder { get; } = folder;

    /// <summary>One look. Returns at once when another one is under way.</summary>
    /// <returns>Whether a sheet was issued or a morning recorded as missed.</returns>
    /// <exception cref="LedgerException">The disk or another process stands in the way.</exception>
    public async Task<bool> RunAsync(CancellationToken stop)
    {
        if (!await _oneAtATime.WaitAsync(0, stop).ConfigureAwait(false))
        {
            return false;
        }

        try
        {
            return Run(stop);
        }
        finally
        {
            _oneAtATime.Release();
        }
    }

    /// <summary>Nothing could be done at this look: the next sheet says since when, and why it was so at first.</summary>
    public void HoldBack(string why) => _held ??= (time.GetUtcNow(), why);

    public void Dispose()
    {
        _pulls.Dispose();
        _oneAtATime.Dispose();
    }

    private bool Run(CancellationToken stop)
    {
        // Asked before the look: what a pull has ended with by now is then seen by it.
        var pullsUnderWay = _pulls.UnderWay;
        var look = Look();
        CheckOnce();
        if (NothingIsDue(out var folderNews) && look.Ready.Count == 0 && folderNews is { Count: 0 } && _held is null)
        {
            return false;
        }

        using var site = OpenSite.Open(Folder, LedgerMode.Write);
        var now = time.GetUtcNow();
        TellHeldBack(site, now);
        TakeDescription(site, now);
        if (site.Versions.Count == 0)
        {
            return false;
        }

        _pulls.StartDue(site.Newest);
        new InboxIntake(site, _inbox, options, time, log).TakeAll(look, stop);
        _folders.Take(site, folderNews ?? _folders.Look(site), stop);
        var hasNews = IssueDue(site, now, pullsUnderWay);
        if (_inboxAlarm.Sentence is null)
        {
            _inbox.Tidy(TimeSpan.FromDays(options.KeepTakenDays));
        }

        ReportFolders.Tidy(Folder, site.Newest.Clock.DateOf(now).AddDays(-options.KeepReportsDays));
        return hasNews;
    }

    /// <summary>At start, before anything is written: a power cut or a failing disk may lie behind it.</summary>
    /// <exception cref="LedgerException">The ledger is damaged: nothing is written to it.</exception>
    private void CheckOnce()
    {
        if (_isChecked || !File.Exists(Folder.LedgerFile))
        {
            return;
        }

        using (var ledger = SiteLedger.Open(Folder.LedgerFile, LedgerMode.Read))
        {
            if (ledger.IntegrityCheck() is [var first, ..])
            {
                throw new LedgerException(LedgerTrouble.Corrupt, $"The ledger {Folder.LedgerFile} is damaged ({first}). Restore a backup.");
            }
        }

        _isChecked = true;
    }

    private void TellHeldBack(OpenSite site, DateTimeOffset now)
    {
        if (_held is not { } held || site.Versions.Count == 0)
        {
            return;
        }

        var (from, to) = (site.Newest.Clock.ToLocal(held.Since), site.Newest.Clock.ToLocal(now));
        var sentence = FormattableString.Invariant($"The work on this site was held back from {from:yyyy-MM-dd HH:mm} to {to:yyyy-MM-dd HH:mm}: {held.Why}");
        site.Ledger.Notices.Add(sentence);
        log.LogWarning("{Site}: {Notice}", Folder.Name, sentence);
        _held = null;
    }

    private void TakeDescription(OpenSite site, DateTimeOffset now)
    {
        var sha = DescriptionFiles.Of(Folder).Sha;
        var why = DescriptionIntake.Take(site, Today(site, now), from: null, now);
        if (why is not null && !string.Equals(sha, _badEdit.Sha, StringComparison.Ordinal))
        {
            log.LogWarning("{Site}: {Notice}", Folder.Name, why);
        }

        _badEdit = why is null ? default : (sha, why);
    }

    private bool IssueDue(OpenSite site, DateTimeOffset now, bool pullsUnderWay)
    {
        var morning = new SiteMorning(site, log) { Promises = SheetPromises.Of(options, time) };

        // First: a sheet that a crash left half made is the one that is due, and not due once more.
        var wasCutShort = morning.Finish(now);
        var plan = Plan(site, now);
        morning.RecordMissed(plan.Missed);
        if (plan.Missed.Count > 0)
        {
            Notice(LateWords.Missed(plan.Missed));
        }

        var hasNews = wasCutShort || plan.Missed.Count > 0;
        if (plan.Issue is { } wanted && WaitsForPulls(site, wanted, now, pullsUnderWay))
        {
            return hasNews;
        }

        var looked = (site.Ledger.Watermark, Newest(site, now));
        if (plan.Issue is { } due)
        {
            var asOf = due.Instant > now ? due.Instant : MorningTime.WholeMinute(now);
            if (now > due.Instant.AddMinutes(1))
            {
                Notice(LateWords.Late(site.Newest.Clock, due.Instant, now));
            }

            morning.Issue(due.Date, asOf, Notices(site, due.Date));
            _notices.Clear();
            hasNews = true;
        }
        else if (_looked != looked && RoundIsOpen(site, now) is { } sheet)
        {
            // New input before the round is done, or a report hour whose sheet was made before its time: another issue if a line changes.
            // Never as of an earlier instant: not within the work before the hour, and not on a clock that was set back.
            var asOf = MorningTime.WholeMinute(now) is var minute && minute > sheet.AsOf ? minute : sheet.AsOf;
            if (morning.Issue(sheet.Date, asOf, Notices(site, sheet.Date), onlyIfChanged: true) is not null)
            {
                _notices.Clear();
                hasNews = true;
            }
        }

        _looked = looked;
        return hasNews;
    }

    /// <summary>
    /// When a morning's work begins, every source is pulled; while that is under way the sheet waits for the next look, as long as
    /// that one comes before the report hour and within the time that is set for it.
    /// </summary>
    private bool WaitsForPulls(OpenSite site, ReportTime due, DateTimeOffset now, bool pullsUnderWay)
    {
        var nextLook = TimeSpan.FromSeconds(options.PollSeconds);
        if (_waits?.Due != due)
        {
            pullsUnderWay = _pulls.StartAll(site.Newest);
            _waits = (due, time.GetTimestamp());
        }

        var isInTime = now + nextLook <= due.Instant || now > due.Instant.AddMinutes(1);
        return pullsUnderWay && isInTime && time.GetElapsedTime(_waits.Value.Since) + nextLook <= TimeSpan.FromSeconds(options.PullWaitSeconds);
    }

    /// <summary>Asks the ledger beside any writer; a site without a ledger has everything before it.</summary>
    /// <param name="folderNews">Changed files of folders that are read in place; null = the site is not known yet.</param>
    private bool NothingIsDue(out IReadOnlyList<FolderNews>? folderNews)
    {
        folderNews = null;
        if (!File.Exists(Folder.LedgerFile))
        {
            return false;
        }

        using var site = OpenSite.Open(Folder, LedgerMode.Read);
        folderNews = _folders.Look(site);
        var now = time.GetUtcNow();
        if (site.Versions.Count > 0)
        {
            _pulls.StartDue(site.Newest);
            _clockDoubt.Follow(site, now);
        }

        var files = DescriptionFiles.Of(Folder);
        if (DescriptionIntake.IsKnown(site, files))
        {
            return IsQuiet(site, now);
        }

        // A bad edit was told when it was first seen; it is no reason to open the ledger at every look.
        return string.Equals(files.Sha, _badEdit.Sha, StringComparison.Ordinal) && (site.Versions.Count == 0 || IsQuiet(site, now));
    }

    private bool IsQuiet(OpenSite site, DateTimeOffset now)
    {
        var plan = Plan(site, now);
        return plan.Issue is null && plan.Missed.Count == 0
            && site.Ledger.Mornings.Unfinished().Count == 0
            && (_looked == (site.Ledger.Watermark, Newest(site, now)) || RoundIsOpen(site, now) is null);
    }

    private MorningPlan Plan(OpenSite site, DateTimeOffset now) => MorningPlan.Of(site, now, WorkBeginsBefore);

    private TimeSpan WorkBeginsBefore => TimeSpan.FromMinutes(options.WorkBeginsMinutesBefore);

    private ReportTime Newest(OpenSite site, DateTimeOffset now) => ReportTime.Newest(site.Newest, now, WorkBeginsBefore);

    /// <summary>Today's newest sheet, while its round is still to be walked; null = it is walked, or there is none.</summary>
    private static IssuedSheet? RoundIsOpen(OpenSite site, DateTimeOffset now)
    {
        var clock = site.Newest.Clock;
        var today = clock.DateOf(now);
        return now < site.Newest.RoundDone(today) ? site.Ledger.Sheets.Issued(today, today).MaxBy(s => s.Issue) : null;
    }

    private InboxLook Look()
    {
        var look = _inbox.Look();
        foreach (var ignored in look.Ignored)
        {
            log.LogWarning("{Site}: {Notice}", Folder.Name, ignored);
        }

        _inboxAlarm.Follow(look);
        return look;
    }

    private List<string> Notices(OpenSite site, DateOnly date)
    {
        string?[] standing = [_clockDoubt.Sentence, _inboxAlarm.Sentence];
        List<string> notices = [.. standing.OfType<string>(), .. _notices, .. _inbox.Notices, .. _folders.Notices, .. _pulls.Notices(site.Newest), .. MailNotices.Of(site, date), .. BackupNotices.Of(site, options, time.GetUtcNow())];
        return _badEdit.Why is { } why ? [why, .. notices] : notices;
    }

    private void Notice(string sentence)
    {
        if (!_notices.Contains(sentence, StringComparer.Ordinal))
        {
            _notices.Add(sentence);
            log.LogWarning("{Site}: {Notice}", Folder.Name, sentence);
        }
    }

    private static DateOnly Today(OpenSite site, DateTimeOffset now) =>
        site.Versions.Count > 0 ? site.Newest.Clock.DateOf(now) : DateOnly.FromDateTime(now.UtcDateTime);
}
