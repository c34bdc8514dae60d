using System.Globalization;

namespace DailyAdjust.Service.Home;

/// <summary>The folders of reports/, one per date.</summary>
public static class ReportFolders
{
    /// <summary>Deletes the folders of dates before a first one; what was issued can be had back from the ledger.</summary>
    public static void Tidy(SiteFolder site, DateOnly firstKept)
    {
        if (!Directory.Exists(site.Reports))
        {
            return;
        }

        foreach (var folder in new DirectoryInfo(site.Reports).EnumerateDirectories())
        {
            if (folder.LinkTarget is null
                && DateOnly.TryParseExact(folder.Name, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
                && date < firstKept)
            {
                folder.Delete(recursive: true);
            }
        }
    }
}
