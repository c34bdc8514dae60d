using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Service.Sites;

/// <summary>Rain that people read off a gauge, as the ledger has it.</summary>
internal static class HandRainBook
{
    /// <summary>
    /// Totals of a date that is not over at an instant and had come in by then (within its minute, since a sheet is as of the minute that has begun): whoever gave one
    /// before the sheet was made spoke of what had fallen. One that came in later speaks of the whole date, of which that sheet cannot know.
    /// </summary>
    /// <param name="upTo">The highest input number that counts: what was taken back or corrected by then is.</param>
    public static IReadOnlyList<LogEntry> TotalsSoFar(OpenSite site, SiteClock clock, DateOnly date, DateTimeOffset asOf, long upTo)
    {
        List<LogEntry> totals = [.. site.Ledger.Logbook.Effective(upTo).Where(e => e.Kind == LogKind.Rain && e.Time.Clock is null && e.Time.Date == date && e.Time.Instant(clock) > asOf)];
        if (totals.Count == 0)
        {
            return totals;
        }

        var arrived = site.Ledger.Logbook.Effective(site.Ledger.WatermarkAt(asOf.AddMinutes(1).AddTicks(-1))).Select(e => e.Identity).ToHashSet();
        return [.. totals.Where(e => arrived.Contains(e.Identity))];
    }

    /// <summary>What becomes of an entry, in a sentence or two; null = it is no rain, or an entry of a gauge that is gone.</summary>
    /// <param name="site">Opened, with the entry in its logbook.</param>
    /// <param name="entry">As it was added.</param>
    /// <param name="now">UTC.</param>
    public static string? Note(OpenSite site, LogEntry entry, DateTimeOffset now)
    {
        if (entry.Kind != LogKind.Rain)
        {
            return null;
        }

        // As a sheet of this minute has it; an entry that lies ahead is known, its instrument is not.
        var (today, at) = (site.Newest, entry.Time.Instant(site.Newest.Clock));
        var asOf = at > now ? at : now;
        var totals = TotalsSoFar(site, today.Clock, today.Clock.DateOf(asOf), asOf, long.MaxValue);
        var readings = ReadingsBook.Between(site, entry.Time.Date.AddDays(-3), entry.Time.Date.AddDays(1));
        var booked = HandRains.Of(today, entry.Time.Date.AddDays(-1), asOf, readings, site.Ledger.Logbook.Effective(), totals, measuredTo: now)
            .LastOrDefault(r => string.Equals(r.Gauge, entry.Where.Name, StringComparison.Ordinal) && r.To == at && r.IsWholeDate == entry.Time.Clock is null);
        return booked is null ? null : HandRainWords.Line(booked, now, new SiteWords(today.Units, today.Clock, today.Clock.DateOf(now))).ToString();
    }
}
