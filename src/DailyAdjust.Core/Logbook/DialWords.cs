using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>An entry that says what is on the dials.</summary>
/// <param name="Entry">A `setting`, `off`, `pause` or `round`.</param>
/// <param name="From">From when on it counts, UTC.</param>
/// <param name="Said">When it was said, UTC; not before <paramref name="From"/>.</param>
/// <param name="Sheet">The one that it answers; null = it names none, or one that was never issued.</param>
internal sealed record DialWord(LogEntry Entry, DateTimeOffset From, DateTimeOffset Said, IssuedSheet? Sheet);

/// <summary>What a logbook says of the dials.</summary>
internal static class DialWords
{
    /// <summary>All of it, in order of arrival. A round of a sheet that was not there says nothing.</summary>
    public static List<DialWord> Of(IReadOnlyList<SiteVersion> versions, IReadOnlyList<LogEntry> log, IReadOnlyList<IssuedSheet> sheets)
    {
        var byDate = sheets.ToLookup(s => s.Date);
        var words = new List<DialWord>();
        foreach (var entry in log.Where(e => e.Kind is LogKind.Setting or LogKind.Off or LogKind.Pause or LogKind.Round))
        {
            if (entry.Kind == LogKind.Round)
            {
                words.AddRange(OfRound(entry, versions, byDate));
            }
            else
            {
                words.Add(OfOne(entry, versions[^1].Site, byDate));
            }
        }

        return words;
    }

    /// <summary>
    /// An answer to a sheet cannot have been carried out before the sheet was there, and was said after it was made, in whatever minute it is told; what the dial showed before answers nothing.
    /// </summary>
    private static DialWord OfOne(LogEntry entry, Site site, ILookup<DateOnly, IssuedSheet> sheets)
    {
        var time = entry.Time.Instant(site.Clock);
        if (entry.Sheet is not { } date || sheets[date].FirstOrDefault(s => s.Issue == entry.Issue) is not { } sheet)
        {
            return new DialWord(entry, time, time, null);
        }

        var from = sheet.AsOf > time && site.Report.IsAfterRound(site.Clock, date, sheet.AsOf) ? sheet.AsOf : time;
        return new DialWord(entry, from, from <= sheet.AsOf && !string.Equals(entry.Text, LogEntry.Found, StringComparison.Ordinal) ? sheet.AsOf.AddTicks(1) : from, sheet);
    }

    /// <summary>A round puts its numbers on the dials when it was to be done, or at the entry's own time when that is earlier.</summary>
    private static IEnumerable<DialWord> OfRound(LogEntry entry, IReadOnlyList<SiteVersion> versions, ILookup<DateOnly, IssuedSheet> sheets)
    {
        if (entry.Sheet is not { } date)
        {
            yield break;
        }

        var said = entry.Time.Instant(versions[^1].Site.Clock);
        if (sheets[date].Where(s => entry.Issue is null ? s.AsOf <= said : s.Issue == entry.Issue).MaxBy(s => s.Issue) is not { } sheet)
        {
            yield break;
        }

        var doneBy = SiteVersions.On(versions, date).RoundDone(date);
        doneBy = doneBy > sheet.AsOf ? doneBy : sheet.AsOf;
        yield return new DialWord(entry, said < doneBy ? said : doneBy, said > sheet.AsOf ? said : sheet.AsOf.AddTicks(1), sheet);
    }
}
