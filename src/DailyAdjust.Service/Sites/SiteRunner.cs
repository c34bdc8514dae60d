using DailyAdjust.Ledger;
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
    private readonly SiteFolders _folders = new(folder, options, time, log);
    private readonly SitePulls _pulls = new(folder, new PullTools { Time = time, Log = log });
    private (ReportTime Due, long Since)? _waits;
    private readonly SemaphoreSlim _oneAtATime = new(1, 1);
    private readonly List<string> _notices = [];
    private long _lookedAt = -1;
    private bool _inboxWasGone;
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
        _notices.AddRange(_folders.Take(site, folderNews ?? _folders.Look(site), stop));
        var hasNews = IssueDue(site, now, pullsUnderWay);
        _inbox.Tidy(TimeSpan.FromDays(options.KeepTakenDays));
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
        var plan = Plan(site, now);
        morning.RecordMissed(plan.Missed);
        var hasNews = plan.Missed.Count > 0;
        if (plan.Issue is { } wanted && WaitsForPulls(site, wanted, now, pullsUnderWay))
        {
            return hasNews;
        }

        if (plan.Issue is { } due)
        {
            var asOf = due.Instant > now ? due.Instant : MorningTime.WholeMinute(now);
            if (now > due.Instant.AddMinutes(1))
            {
                Notice(FormattableString.Invariant($"This sheet was due at {site.Newest.Clock.ToLocal(due.Instant):HH:mm} and was made at {site.Newest.Clock.ToLocal(now):HH:mm}."));
            }

            morning.Issue(due.Date, asOf, Notices(site, due.Date));
            _notices.Clear();
            hasNews = true;
        }
        else if (site.Ledger.Watermark > _lookedAt && RoundIsOpen(site, now) is { } today)
        {
            // New input before the round is done: another issue if a line changes.
            if (morning.Issue(today, MorningTime.WholeMinute(now), Notices(site, today), onlyIfChanged: true) is not null)
            {
                _notices.Clear();
                hasNews = true;
            }
        }

        _lookedAt = site.Ledger.Watermark;
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
        if (site.Versions.Count > 0)
        {
            _pulls.StartDue(site.Newest);
        }

        var now = time.GetUtcNow();
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
            && (site.Ledger.Watermark == _lookedAt || RoundIsOpen(site, now) is null);
    }

    private MorningPlan Plan(OpenSite site, DateTimeOffset now)
    {
        var newest = site.Ledger.Mornings.Last();
        var sheet = newest is null ? null : site.Ledger.Sheets.Issued(newest.Date, newest.Date).MaxBy(s => s.Issue);
        return MorningPlan.Of(site.Newest, newest?.Date, sheet, now, TimeSpan.FromMinutes(options.WorkBeginsMinutesBefore));
    }

    /// <summary>Today, if its sheet is issued and its round is still to be walked.</summary>
    private static DateOnly? RoundIsOpen(OpenSite site, DateTimeOffset now)
    {
        var clock = site.Newest.Clock;
        var today = clock.DateOf(now);
        return now < site.Newest.RoundDone(today) && site.Ledger.Sheets.Issued(today, today).Count > 0 ? today : null;
    }

    private InboxLook Look()
    {
        try
        {
            var look = _inbox.Look();
            foreach (var ignored in look.Ignored)
            {
                log.LogWarning("{Site}: {Notice}", Folder.Name, ignored);
            }

            _inboxWasGone = false;
            return look;
        }
        catch (DirectoryNotFoundException)
        {
            if (!_inboxWasGone)
            {
                Notice($"The inbox {Folder.Inbox} is gone: nothing can come in until it is back.");
                _inboxWasGone = true;
            }

            return new([], 0, []);
        }
    }

    private List<string> Notices(OpenSite site, DateOnly date)
    {
        List<string> notices = [.. _notices, .. _folders.Notices, .. _pulls.Notices(site.Newest), .. MailNotices.Of(site, date)];
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
