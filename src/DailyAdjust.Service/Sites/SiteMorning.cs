using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Records;
using DailyAdjust.Reports;
using DailyAdjust.Service.Health;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Mail;
using DailyAdjust.Service.Paper;
using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Sites;

/// <summary>A sheet that was issued.</summary>
/// <param name="Sheet">What it says.</param>
/// <param name="Issue">1, 2, ...</param>
/// <param name="Folder">Where its files lie.</param>
public sealed record IssuedMorning(MorningSheet Sheet, int Issue, string Folder);

/// <summary>
/// One morning of one site: gather what it may know, calculate, render, record, write, record. Each step is kept before the next
/// begins, so that a start after a crash finishes the same sheet.
/// </summary>
/// <param name="site">Opened for writing.</param>
/// <param name="log">One event per advice.</param>
public sealed class SiteMorning(OpenSite site, ILogger log)
{
    /// <summary>Promises written sheets to their recipients; null = no mail.</summary>
    public SheetPromises? Promises { get; init; }

    /// <summary>Whether what is issued now is mailed; a sheet that a crash left is in any case.</summary>
    public bool MailsNew { get; init; } = true;

    /// <summary>Issues the next sheet of a date.</summary>
    /// <param name="date">The sheet's date.</param>
    /// <param name="asOf">The instant whose knowledge counts, UTC.</param>
    /// <param name="notices">What the morning's work itself has to report, after what waits in the ledger to be said.</param>
    /// <param name="onlyIfChanged">Issue nothing when every line says what the date's newest sheet said and nobody told that something did not run.</param>
    /// <returns>Null = nothing changed.</returns>
    public IssuedMorning? Issue(DateOnly date, DateTimeOffset asOf, IReadOnlyList<string> notices, bool onlyIfChanged = false)
    {
        Finish();
        var settled = date.AddDays(-2);
        WeatherBook.Keep(site, settled);
        SoilBook.Keep(site, settled);
        var issued = site.Ledger.Sheets.Issued(date, date);
        var issue = site.Ledger.Mornings.Of(date).Select(m => m.Issue).Append(0).Max() + 1;
        var sheet = MorningCalculation.Run(MorningKnowledge.Of(site, date, asOf, issue));
        if (onlyIfChanged && issued.Count > 0 && SaysTheSame(issued[^1].Lines, Lines(sheet)) && !HasNewsOfTheNight(date, sheet))
        {
            return null;
        }

        MorningRecord? begun = null;
        site.Ledger.InOneStep(() =>
        {
            begun = site.Ledger.Mornings.Begin(date, asOf, CalculationVersions.Calculation, CalculationVersions.TimeZones);
            site.Ledger.Notices.Add(notices);
        });
        return Complete(begun!, sheet, MailsNew ? Promises : null);
    }

    /// <summary>Finishes sheets that a crash left between two steps, as of their own instant and inputs.</summary>
    /// <param name="now">UTC: one that is late by now says so; null = none does.</param>
    /// <returns>Whether there was one.</returns>
    public bool Finish(DateTimeOffset? now = null)
    {
        var unfinished = site.Ledger.Mornings.Unfinished();
        foreach (var morning in unfinished)
        {
            if (morning.Step == MorningStep.Computed)
            {
                Write(morning.Date, morning.Issue, site.Ledger.Sheets.ReportFiles(morning.Date, morning.Issue), Promises);
            }
            else
            {
                var sheet = MorningCalculation.Run(MorningKnowledge.Of(site, morning.Date, morning.AsOf, morning.Issue, morning.Watermark));
                Complete(morning, sheet, Promises, now is { } finished ? Late(morning, finished) : null);
            }
        }

        return unfinished.Count > 0;
    }

    /// <summary>Records mornings that were slept over; the balance closes their days by itself.</summary>
    public void RecordMissed(IReadOnlyList<DateOnly> dates)
    {
        foreach (var date in dates)
        {
            site.Ledger.Mornings.RecordMissed(
                date, ReportTime.Of(site.Newest, date).Instant, CalculationVersions.Calculation, CalculationVersions.TimeZones);
            ServiceMetrics.MorningMissed(site.Folder.Name);
            log.LogWarning("{Site}: the morning of {Date:yyyy-MM-dd} was slept over; no sheet was issued", site.Folder.Name, date);
        }
    }

    /// <summary>By what a person does at the boxes; the figures of stations set aside change with every reading, and nobody walks for them.</summary>
    private static bool SaysTheSame(IReadOnlyList<IssuedLine> one, IReadOnlyList<IssuedLine> other) =>
        one.Select(line => line with { SetAside = null, UncutPercent = null }).SequenceEqual(other.Select(line => line with { SetAside = null, UncutPercent = null }));

    /// <summary>Whether somebody wrote since the date's newest sheet that something did not run or lost power, and this one has something to say to it.</summary>
    private bool HasNewsOfTheNight(DateOnly date, MorningSheet sheet)
    {
        if ((sheet.RunByHand is null && sheet.BoxesToVerify.Count == 0) || site.Ledger.Mornings.Of(date).MaxBy(m => m.Issue) is not { } newest)
        {
            return false;
        }

        return TouchedDays.Differences(site.Ledger.Logbook.Effective(newest.Watermark), site.Ledger.Logbook.Effective()).Any(e => e.Kind is LogKind.Ran or LogKind.Power);
    }

    /// <summary>Of a sheet that was begun in time for a report hour and is finished after it, on the same date; else null.</summary>
    private string? Late(MorningRecord begun, DateTimeOffset now) =>
        now > begun.AsOf.AddMinutes(1) && site.Newest.Clock.DateOf(now) == begun.Date && ReportTime.Newest(site.Newest, begun.AsOf, TimeSpan.Zero).Instant == begun.AsOf
            ? LateWords.Late(site.Newest.Clock, begun.AsOf, now)
            : null;

    private IssuedMorning Complete(MorningRecord begun, MorningSheet sheet, SheetPromises? mail, string? late = null)
    {
        var (date, issue) = (begun.Date, begun.Issue);
        var replaced = site.Ledger.Sheets.Issued(date, date).Select(s => (int?)s.Issue).Max();
        var report = MorningReport.Render(sheet, new SheetIssue
        {
            SiteId = site.Folder.Name,
            Number = issue,
            Replaces = replaced,
            Notices = [.. site.Ledger.Notices.Waiting, .. late is null ? Array.Empty<string>() : [late]],
        });
        var files = report.All.ToDictionary(f => f.Name, f => f.Bytes.ToArray(), StringComparer.Ordinal);
        site.Ledger.InOneStep(() =>
        {
            site.Ledger.Mornings.RecordComputed(date, issue, Lines(sheet), files);
            site.Ledger.Notices.Clear();
            if (replaced is not null)
            {
                // "Done" means the newest issue of its date.
                site.Ledger.ForgetBalanceFrom(date);
            }
        });
        Write(date, issue, [.. report.All.Select(f => KeyValuePair.Create(f.Name, files[f.Name]))], mail);
        Tell(sheet, issue);
        WriteSummary(date);
        return new(sheet, issue, site.Folder.ReportFolder(date));
    }

    private void Write(DateOnly date, int issue, IReadOnlyList<KeyValuePair<string, byte[]>> files, SheetPromises? mail)
    {
        var folder = site.Folder.ReportFolder(date);
        SheetPrint.Forget(folder);
        AtomicFile.WriteAll(folder, files);

        // Once more: one of the page that was replaced may have been finished meanwhile.
        SheetPrint.Forget(folder);

        var promises = mail?.For(site, date, issue) ?? [];
        site.Ledger.InOneStep(() =>
        {
            site.Ledger.Mornings.RecordWritten(date, issue);
            foreach (var promise in promises)
            {
                site.Ledger.Outbox.Promise(promise);
            }
        });
    }

    /// <summary>The sheet is out, and no fault of the books takes it back: those that cannot be written are written with the next one. A failing disk is the worker's.</summary>
    private void WriteSummary(DateOnly date)
    {
        try
        {
            SummaryFiles.WriteDue(site, date);
        }
        catch (Exception e) when (!DiskTrouble.IsFailed(e))
        {
            log.LogWarning(e is IOException or UnauthorizedAccessException or LedgerException ? null : e, "{Site}: the week's summary could not be written: {Why}", site.Folder.Name, e.Message);
        }
    }

    private void Tell(MorningSheet sheet, int issue)
    {
        ServiceMetrics.SheetIssued(site.Folder.Name);
        log.LogInformation("{Site}: sheet {Date:yyyy-MM-dd}/{Issue} written", site.Folder.Name, sheet.Date, issue);
        foreach (var advice in sheet.Programs)
        {
            log.LogInformation(
                "{Site} {Date:yyyy-MM-dd}/{Issue} {Program}: {Advice} {Percent}, exactly {ExactPercent}. {Reason}",
                site.Folder.Name, sheet.Date, issue, advice.Key.ToString(), AdviceCode.Of(advice.Advice), advice.Percent, advice.ExactPercent, advice.Reason);
        }
    }

    private static IReadOnlyList<IssuedLine> Lines(MorningSheet sheet) =>
        [.. sheet.Programs.Select(p => new IssuedLine(p.Key, p.Advice, p.Percent, p.NeedsVisit, p.PauseDays)
        {
            SetAside = p.Zones.Any(z => z.Percent is not null)
                ? [.. p.Zones.Where(z => z.SetAside).Select(z => new IssuedAside(z.Station.Station, Math.Round(z.Percent!.Value, 4), Math.Round(z.AreaMedianPercent!.Value, 4)))]
                : null,
            UncutPercent = sheet.Fit.Cuts.FirstOrDefault(c => c.Program == p.Key)?.FromPercent,
        })];
}
