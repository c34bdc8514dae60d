using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Records;
using DailyAdjust.Reports;
using DailyAdjust.Reports.Index;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Sites;

/// <summary>A site as the page over all sites sees it: its sheets as they were issued, nothing calculated again.</summary>
public static class IndexBook
{
    public static IndexSite Of(SiteFolder folder)
    {
        var pages = ReportFolders.WithFile(folder, ReportFiles.Html);
        try
        {
            if (!SiteLedger.IsThere(folder.LedgerFile))
            {
                return new() { Id = folder.Name, Site = DescriptionFiles.Of(folder).Reading.Site, Days = Days(folder, pages, []) };
            }

            using var open = OpenSite.Open(folder, LedgerMode.Read);
            return open.Ledger.InOneView(() => Of(open, pages));
        }
        catch (Exception failure) when (failure is LedgerException or InvalidDataException)
        {
            return new() { Id = folder.Name, Trouble = failure.Message, Days = Days(folder, pages, []) };
        }
    }

    private static IndexSite Of(OpenSite open, IReadOnlyList<DateOnly> pages)
    {
        var sheets = open.Ledger.Sheets.Issued().NewestOfDates().ToDictionary(s => s.Date);
        var newest = sheets.Count == 0 ? null : sheets[sheets.Keys.Max()];
        var last = open.Ledger.Mornings.Last();
        return new()
        {
            Id = open.Folder.Name,
            Site = open.Versions.Count > 0 ? open.Newest : null,
            Newest = newest is null ? null : Sheet(open, newest),
            Summaries = Summaries(open.Folder),
            Missed = last is { Step: MorningStep.Missed } && (newest is null || last.Date > newest.Date) ? last.Date : null,
            Days = Days(open.Folder, pages, sheets),
        };
    }

    private static IndexSheet Sheet(OpenSite open, IssuedSheet sheet)
    {
        var record = open.Ledger.Mornings.Get(sheet.Date, sheet.Issue)!;
        var site = SiteVersions.On(open.VersionsUpTo(record.Watermark), sheet.Date);
        var json = open.Ledger.Sheets.ReportFile(sheet.Date, sheet.Issue, ReportFiles.AdviceJson);
        return new(sheet.Date, sheet.Issue, site, () => json());
    }

    private static IReadOnlyList<string> Summaries(SiteFolder folder) =>
        Directory.Exists(folder.Summaries) ? [.. Directory.GetFiles(folder.Summaries, "*.html").Select(file => Path.GetFileName(file))] : [];

    private static IReadOnlyList<IndexDay> Days(SiteFolder folder, IReadOnlyList<DateOnly> pages, Dictionary<DateOnly, IssuedSheet> sheets)
    {
        var rounds = ReportFolders.WithFile(folder, ReportFiles.RoundCsv).ToHashSet();
        return [.. pages.Select(date => new IndexDay(date, sheets.TryGetValue(date, out var sheet) ? Read(sheet) : null, rounds.Contains(date)))];
    }

    /// <summary>The page is written when the ledger is closed again.</summary>
    private static IssuedSheet Read(IssuedSheet sheet) => sheet with { Lines = [.. sheet.Lines] };
}
