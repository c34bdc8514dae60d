using System.Globalization;

namespace DailyAdjust.Service.Home;

/// <summary>The folders of reports/, one per date.</summary>
public static class ReportFolders
{
    /// <summary>Deletes the folders of dates before a first one; what was issued can be had back from the ledger.</summary>
    public static void Tidy(SiteFolder site, DateOnly firstKept)
    {
        foreach (var (folder, date) in Dated(site))
        {
            if (folder.LinkTarget is null && date < firstKept)
            {
                folder.Delete(recursive: true);
            }
        }
    }

    /// <summary>The dates whose folder holds a file of that name, ascending.</summary>
    public static IReadOnlyList<DateOnly> WithFile(SiteFolder site, string name) =>
        [.. Dated(site).Where(f => File.Exists(Path.Combine(f.Folder.FullName, name))).Select(f => f.Date).Order()];

    private static IEnumerable<(DirectoryInfo Folder, DateOnly Date)> Dated(SiteFolder site)
    {
        if (!Directory.Exists(site.Reports))
        {
            yield break;
        }

        foreach (var folder in new DirectoryInfo(site.Reports).EnumerateDirectories())
        {
            if (DateOnly.TryParseExact(folder.Name, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
            {
                yield return (folder, date);
            }
        }
    }
}
