using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Words;

/// <summary>What a program's number leaves: the zones it does not serve.</summary>
internal static class ZoneWords
{
    private const int Most = 4;

    /// <param name="advice">The program.</param>
    /// <param name="worth">Share of allowable depletion below which water that drains is not worth a word.</param>
    /// <param name="words">The site's.</param>
    public static IEnumerable<Phrase> Left(ProgramAdvice advice, double worth, SiteWords words)
    {
        var aside = advice.Zones.Where(z => z.SetAside).ToList();
        var shorted = advice.Zones.Where(z => !z.SetAside && z.ShortMm > 0).OrderByDescending(z => z.ShortMm).ToList();
        var wet = advice.Zones.Where(z => z.DrainsMm > worth * z.AllowableMm).OrderByDescending(z => z.DrainsMm).ToList();
        if (aside.Count > 0)
        {
            yield return $"Left to hose and probe: {Names(aside, z => z.Percent is { } p ? $" (alone it would need {SiteWords.Percent(Math.Round(p))})" : Phrase.Empty)}.";
        }

        if (shorted.Count > 0)
        {
            yield return $"Stays past the allowable: {Names(shorted, z => $" by {words.DepthOf(z.ShortMm)}")}.";
        }

        if (wet.Count > 0)
        {
            yield return $"Too wet, hold back base minutes: {Names(wet, z => $" ({words.DepthOf(z.DrainsMm)} would drain)")}.";
        }
    }

    public static string Name(ZoneAdvice zone) => zone.Name.Length > 0 ? zone.Name : zone.Station.ToString();

    /// <summary>"green 4 (C2/1)"; the address alone where it has no other name.</summary>
    public static string Named(string name, StationKey station) =>
        CommonWords.Named(string.Equals(name, station.ToString(), StringComparison.Ordinal) ? "" : name, station.ToString());

    private static Phrase Names(List<ZoneAdvice> zones, Func<ZoneAdvice, Phrase> more)
    {
        var named = Phrase.Join(", ", zones.Take(Most).Select(z => Phrase.Of($"{Name(z)}{more(z)}")));
        return zones.Count > Most ? $"{named}, {CommonWords.AndMore(zones.Count - Most)}" : named;
    }
}
