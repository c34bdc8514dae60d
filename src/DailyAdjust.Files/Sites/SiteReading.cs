using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Sites;

/// <summary>What came of reading site.yaml and stations.csv.</summary>
/// <param name="Site">The whole site, known good; null when there is any error.</param>
/// <param name="Corrects">
/// The description says `correct: true`: it corrects what was always so, and holds from the site's start instead of
/// from the day after it is first read.
/// </param>
/// <param name="Problems">Errors and warnings of both files, site.yaml first, by line and column.</param>
public sealed record SiteReading(Site? Site, bool Corrects, IReadOnlyList<Problem> Problems);
