using System.Globalization;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Reports.Index;

namespace DailyAdjust.Reports.Words;

/// <summary>The page over all sites.</summary>
internal static class IndexWords
{
    public const string Title = "All sites today";
    public const string Sites = "Sites, the most urgent first";
    public const string SheetMissing = "No sheet";
    public const string Past = "Past sheets";
    public const string NoSite = "No site is set up here yet. `dailyadjust new` does it.";
    public const string Clocks = "Every time is the time of day at its own site.";
    public const string OnSheet = "Why, and where to take the hose, stand on each site's sheet.";

    public static string Heading(IndexView view) => view.Today is { } today ? SiteWords.LongDate(today).ToString() : Title;

    /// <summary>"Open 7 boxes at 2 of 3 sites. 1 site has no sheet."</summary>
    public static string Lead(IndexView view)
    {
        var (visit, all) = (view.ToVisit, CommonWords.Count(view.Sites.Count, "site", "sites"));
        var missing = view.Sites.Count(s => s.Urgency == Urgency.NoSheet);
        var lead = visit.Count > 0 ? $"Open {CommonWords.Count(visit.Sum(s => s.Boxes.Count), "box", "boxes")} at {SiteWords.Count(visit.Count)} of {all}."
            : missing < view.Sites.Count ? $"{RoundWords.Nothing.ToString()[..^1]}, {all}."
            : "";
        var none = missing > 0 ? $" {CommonWords.Count(missing, "site has", "sites have")} no sheet for this day." : "";
        return (lead + none).TrimStart();
    }

    /// <summary>What one site asks for: "Open 2 boxes: skip 1 and change 1, before 13:00."; empty where there is no sheet.</summary>
    public static string Do(SiteToday site) => site switch
    {
        { Urgency: Urgency.NoSheet } => "",
        { Boxes.Count: > 0 } => $"{RoundWords.Boxes(site.Boxes.Count, site.Counts)}, {site.By}.",
        { Urgency: Urgency.NoAdvice } => RoundWords.NoAdvice.ToString(),

        // Not "no box": one that lost power is opened though no dial is turned.
        _ => RoundWords.Nothing.ToString(),
    };

    /// <summary>"Sheet 2026-07-16/2".</summary>
    public static string SheetOf(IndexSheet sheet) => $"{PageWords.Sheet} {CodeWords.SheetId(sheet.Date, sheet.Issue)}";

    public static string Round(SiteToday site) => $"{site.Name}: round, {site.By}";

    /// <summary>Why there is no sheet of today, and what that means for an older one.</summary>
    public static IReadOnlyList<Warning> NoSheet(IndexSite site, DateOnly? today)
    {
        var newest = site.Newest is { } sheet && sheet.Date != today ? $" The newest is of {SiteWords.Date(sheet.Date)}: its round is not listed here, for its numbers were that day's." : "";
        var why = site.Trouble is { } trouble ? $"Its records cannot be read: {FreshnessWords.Sentence(trouble)}"
            : site.Site is null ? Typed.MarkCommands("Its description was never read without errors: `dailyadjust check` says what to put right.")
            : site.Missed is { } missed && missed == today ? $"The morning of {SiteWords.Date(missed)} was slept over: nothing was issued."
            : today is { } day ? $"None of {SiteWords.Date(day)} yet; it is due at {CommonWords.List([.. site.Site.Report.At.Select(SiteWords.Clock)])}."
            : "None was issued yet.";
        return [new(new(SheetMissing), Phrase.Verbatim(why + newest))];
    }

    public const string Summaries = "Where the water went:";

    /// <summary>"Season 2026", "week from Mon 6 July"; null for a page that is neither.</summary>
    public static string? Summary(string page) => Path.GetFileNameWithoutExtension(page) is var name
        && name.StartsWith(SeasonPage, StringComparison.Ordinal) ? $"season {name[SeasonPage.Length..]}"
        : name.StartsWith(WeekPage, StringComparison.Ordinal) && DateOnly.TryParseExact(name[WeekPage.Length..], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var monday)
            ? $"week from {SiteWords.ShortDate(monday)}"
        : null;

    private const string SeasonPage = "season-";
    private const string WeekPage = "week-";

    public static string Month(DateOnly day) => day.ToString("MMMM yyyy", CultureInfo.InvariantCulture);

    public static string Sheets(int count) => CommonWords.Count(count, "sheet", "sheets");

    /// <summary>"issue 2, 4 boxes: skip 1 and change 6"; empty where the ledger does not know of the sheet.</summary>
    public static string Day(IndexDay day)
    {
        if (day.Sheet is not { } sheet)
        {
            return "";
        }

        var visits = sheet.Lines.Where(l => l.Asks).ToList();
        var issue = sheet.Issue > 1 ? $"issue {SiteWords.Count(sheet.Issue)}, " : "";
        return issue + (visits.Count == 0
            ? "no box"
            : $"{CommonWords.Count(visits.Select(l => l.Program.Controller).Distinct(StringComparer.Ordinal).Count(), "box", "boxes")}: {RoundWords.Acts(RoundCounts.Of(sheet.Lines))}");
    }
}
