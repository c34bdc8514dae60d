using Microsoft.Data.Sqlite;

namespace DailyAdjust.Ledger.Inputs;

/// <summary>The site description as it was read on some day.</summary>
/// <param name="Seq">Its input number.</param>
/// <param name="From">The first date on which it holds.</param>
/// <param name="Corrects">It took the place of an earlier one from that one's first date on.</param>
/// <param name="Sha">SHA-256 over both texts, lower-case hexadecimals.</param>
/// <param name="Site">site.yaml, its bytes.</param>
/// <param name="Stations">stations.csv, its bytes.</param>
public sealed record SiteText(long Seq, DateOnly From, bool Corrects, string Sha, byte[] Site, byte[] Stations);

/// <summary>Every version of the site description, as text; only ever added to.</summary>
public sealed class SiteTexts
{
    private readonly LedgerDb _db;
    private readonly InputOrder _order;

    internal SiteTexts(LedgerDb db, InputOrder order)
    {
        _db = db;
        _order = order;
    }

    /// <summary>
    /// Adds a version that holds from a date on, in place of every version that holds from that date or a later one.
    /// The text that holds last already, from that date or an earlier one, changes nothing.
    /// </summary>
    /// <param name="from">The first date on which it holds.</param>
    /// <param name="corrects">It takes the place of the version that holds on <paramref name="from"/>, from that one's first date on.</param>
    /// <returns>The version as it was added; null = nothing was new.</returns>
    public SiteText? Add(DateOnly from, bool corrects, byte[] site, byte[] stations, DateTimeOffset at) => _db.InOneStep(() =>
    {
        var known = Effective();
        var start = (corrects ? known.LastOrDefault(v => v.From <= from)?.From : null) ?? from;
        var sha = ShaOf(site, stations);
        if (known.Count > 0 && string.Equals(known[^1].Sha, sha, StringComparison.Ordinal) && start >= known[^1].From)
        {
            return null;
        }

        var version = new SiteText(_order.Next(InputOrder.Site, at), start, corrects, sha, site, stations);
        _db.Execute(
            "INSERT INTO site_version (seq, from_day, corrects, sha, site, stations) VALUES ($seq, $from, $corrects, $sha, $site, $stations)",
            ("$seq", version.Seq),
            ("$from", Formats.OfDay(start)),
            ("$corrects", corrects ? 1 : 0),
            ("$sha", sha),
            ("$site", site),
            ("$stations", stations));
        return version;
    });

    /// <summary>The versions that hold, by first date, each up to the next one's.</summary>
    /// <param name="upTo">The highest input number to look at: what was known then.</param>
    public IReadOnlyList<SiteText> Effective(long upTo = long.MaxValue)
    {
        var holding = new List<SiteText>();
        foreach (var version in All(upTo))
        {
            holding.RemoveAll(v => v.From >= version.From);
            holding.Add(version);
        }

        return holding;
    }

    /// <summary>Every version that was ever added, in that order, whether it holds still or not.</summary>
    public IReadOnlyList<SiteText> History() => All(long.MaxValue);

    /// <summary>SHA-256 by which two texts are told apart, lower-case hexadecimals.</summary>
    public static string ShaOf(byte[] site, byte[] stations) => Formats.Sha([.. site, 0, .. stations]);

    private static SiteText ToText(SqliteDataReader r) => new(
        r.GetInt64(0), Formats.ToDay(r.GetString(1)), r.GetInt64(2) == 1, r.GetString(3), (byte[])r[4], (byte[])r[5]);

    private List<SiteText> All(long upTo) => _db.Query(
        "SELECT seq, from_day, corrects, sha, site, stations FROM site_version WHERE seq <= $seq ORDER BY seq", ToText, ("$seq", upTo));
}
