using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Index;

/// <summary>All sites arranged for reading: the most urgent first.</summary>
public sealed class IndexView
{
    public IndexView(IReadOnlyList<IndexSite> sites)
    {
        // A page that knows no clock takes the newest morning of all sites for today.
        Today = sites.SelectMany(s => new[] { s.Newest?.Date, s.Missed }).Max();
        var shared = sites.GroupBy(NameOf, StringComparer.Ordinal).Where(g => g.Count() > 1).Select(g => g.Key).ToHashSet(StringComparer.Ordinal);
        Sites =
        [
            .. sites.Select(s => new SiteToday(s, shared.Contains(NameOf(s)) ? CommonWords.Named(NameOf(s), s.Id) : NameOf(s), Today))
                .OrderBy(s => s.Urgency).ThenBy(s => s.Name, StringComparer.Ordinal),
        ];
        ByName = [.. Sites.OrderBy(s => s.Name, StringComparer.Ordinal)];
    }

    /// <summary>Null = no site has had a morning yet.</summary>
    public DateOnly? Today { get; }

    /// <summary>The most urgent first.</summary>
    public IReadOnlyList<SiteToday> Sites { get; }

    public IReadOnlyList<SiteToday> ByName { get; }

    public IReadOnlyList<SiteToday> ToVisit => [.. Sites.Where(s => s.Boxes.Count > 0)];

    /// <summary>Sites with a dial to turn, a box to verify, or starts and stations to change.</summary>
    public IReadOnlyList<SiteToday> Rounds => [.. Sites.Where(s => s.Boxes.Count + s.ToVerify.Count + s.Acts.Count > 0)];

    /// <summary>Whether the sites' clocks differ.</summary>
    public bool HasSeveralZones => Sites.Select(s => s.Record.Site?.Clock.ZoneId).Where(z => z is not null).Distinct(StringComparer.Ordinal).Count() > 1;

    /// <summary>Relative to the page; null = no such page lies in the site's folder.</summary>
    public static string? PageOf(IndexSite site, DateOnly date) =>
        site.Days.Any(d => d.Date == date) ? Link(site, date, ReportFiles.Html) : null;

    public static string Link(IndexSite site, DateOnly date, string file) => $"sites/{Uri.EscapeDataString(site.Id)}/reports/{CodeWords.Date(date)}/{file}";

    /// <summary>Where a page of the site's summaries lies, relative to the page.</summary>
    public static string Summary(IndexSite site, string page) => $"sites/{Uri.EscapeDataString(site.Id)}/summaries/{Uri.EscapeDataString(page)}";

    private static string NameOf(IndexSite site) => site.Site?.Name ?? site.Id;
}
