using DailyAdjust.Files;

namespace DailyAdjust.Service.Sites;

/// <summary>Takes an edited site.yaml or stations.csv in as a new version; a bad edit leaves the last good one in force.</summary>
public static class DescriptionIntake
{
    private const int MostNamed = 6;

    /// <param name="site">Opened for writing.</param>
    /// <param name="today">The date on which it is read: a change holds from the day after.</param>
    /// <param name="from">The first date on which it holds, if somebody said so.</param>
    /// <param name="now">UTC.</param>
    /// <returns>What the sheet has to say about it; null = nothing.</returns>
    public static string? Take(OpenSite site, DateOnly today, DateOnly? from, DateTimeOffset now)
    {
        var files = DescriptionFiles.Of(site.Folder);
        if (IsKnown(site, files) && from is null)
        {
            ReadingsBook.ReadAgainWhereNeeded(site);
            return null;
        }

        if (files.Reading.Site is not { } read)
        {
            return BadEdit(site, files.Reading.Problems);
        }

        var corrects = files.Reading.Corrects && site.Texts.Count > 0;
        var holdsFrom = from ?? (site.Texts.Count == 0 || corrects ? read.Start : today.AddDays(1));
        var notice = site.Texts.Count > 0 && !corrects && from is null
            ? FormattableString.Invariant($"The edited description holds from {holdsFrom:yyyy-MM-dd}; earlier days keep the old one. If it puts right what was wrong all along, write correct: true under site: in site.yaml.")
            : null;
        var gone = site.Texts.Count == 0 ? [] : site.Newest.Stations.Select(s => s.Key.ToString()).Except(read.Stations.Select(s => s.Key.ToString()), StringComparer.Ordinal).ToList();
        if (gone.Count > 0)
        {
            notice = $"{(notice is null ? "" : notice + " ")}No longer in it: {string.Join(", ", gone.Take(MostNamed))}{(gone.Count > MostNamed ? ", ..." : "")}. If that is not meant, stations.csv may have been saved by half.";
        }

        site.Ledger.InOneStep(() =>
        {
            if (site.Ledger.SiteVersions.Add(holdsFrom, corrects, files.Yaml, files.Stations, now) is { } version)
            {
                site.Reload();
                ReadingsBook.ReadAgainWhereNeeded(site);
                site.Ledger.InvalidateFrom(version.From);
            }

            if (notice is not null)
            {
                site.Ledger.Notices.Add(notice);
            }
        });
        return notice;
    }

    /// <summary>Whether the files say what the newest version says.</summary>
    public static bool IsKnown(OpenSite site, DescriptionFiles files) =>
        site.Texts.Count > 0 && string.Equals(site.Texts[^1].Sha, files.Sha, StringComparison.Ordinal);

    private static string BadEdit(OpenSite site, IReadOnlyList<Problem> problems)
    {
        var first = problems.First(p => p.Severity == Severity.Error);
        var more = problems.Count(p => p.Severity == Severity.Error) - 1;
        var others = more > 0 ? FormattableString.Invariant($" And {more} more: see `dailyadjust check`.") : "";
        return site.Texts.Count == 0
            ? $"The site's description cannot be read: {first}{others}"
            : FormattableString.Invariant($"An edit of the site's description has errors, so the description of {site.Texts[^1].From:yyyy-MM-dd} still holds. {first}{others}");
    }
}
