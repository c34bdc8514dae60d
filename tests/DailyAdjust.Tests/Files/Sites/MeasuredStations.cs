using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Sites;

namespace DailyAdjust.Tests.Files.Sites;

/// <summary>Measured rates written into a stations.csv that reads, and read back.</summary>
internal static class MeasuredStations
{
    /// <summary>What does not hold: nothing measured changes nothing; what was measured stands there after it, and nothing else has changed; the second time changes nothing. Null = all holds.</summary>
    /// <param name="yaml">site.yaml.</param>
    /// <param name="text">stations.csv.</param>
    /// <param name="site">What both were read as.</param>
    public static string? Fault(string yaml, string text, Site site)
    {
        if (!string.Equals(text, StationsEdit.Of(text, site, []).Text, StringComparison.Ordinal))
        {
            return "nothing was measured, and the file changed";
        }

        MeasuredStation[] measured = [.. site.Stations.Where((_, i) => i % 2 == 0).Select((s, i) => new MeasuredStation(s.Key, 3 + (i % 400 / 7.0), 0.5 + (i % 15 / 40.0)))];
        var edited = StationsEdit.Of(text, site, measured).Text;
        var reading = SiteReader.Read("site.yaml", yaml, "stations.csv", edited);
        if (reading.Site is not { } back)
        {
            return "with measured rates it is not read any more: " + string.Join("; ", reading.Problems);
        }

        foreach (var (old, now) in site.Stations.Zip(back.Stations))
        {
            var found = Array.Find(measured, m => m.Station == old.Key);
            var same = (old.Key, old.Name, old.FlowLPerMin, old.GroundM2, old.Exposure, old.Note) == (now.Key, now.Name, now.FlowLPerMin, now.GroundM2, now.Exposure, now.Note)
                && Math.Abs((found?.RateMmPerHour ?? old.Rate.MmPerHour) - now.Rate.MmPerHour) <= 0.001 * Math.Max(old.Rate.MmPerHour, found?.RateMmPerHour ?? 0)
                && now.RateKnown == (found is null ? old.RateKnown : RateKnown.Measured)
                && Math.Abs((found?.LowerQuarter ?? old.DistributionUniformity ?? 0) - (now.DistributionUniformity ?? 0)) <= 0.001;
            if (!same)
            {
                return $"{old.Key} was {old.Rate}, {found} was measured, and it became {now.Rate}, {now.RateKnown}, {now.DistributionUniformity}";
            }
        }

        return back.Stations.Count != site.Stations.Count ? "stations were lost"
            : string.Equals(edited, StationsEdit.Of(edited, back, measured).Text, StringComparison.Ordinal) ? null
            : "the second time changed the file again";
    }
}
