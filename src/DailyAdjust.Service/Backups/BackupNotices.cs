using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Backups;

/// <summary>What a sheet tells of backups that are not made: it is what people look at.</summary>
internal static class BackupNotices
{
    /// <summary>A computer may be off over a long weekend.</summary>
    private static readonly TimeSpan Late = TimeSpan.FromDays(4);

    public static IReadOnlyList<string> Of(OpenSite site, ServiceOptions options, DateTimeOffset now)
    {
        if (SiteBackup.At(options) is null || site.Ledger.FirstInputAt is not { } first)
        {
            return [];
        }

        var newest = new SiteBackup(site.Folder, options).Files.Newest(now)?.MadeAt;
        return now - (newest ?? first) <= Late ? []
            : newest is { } made ? [FormattableString.Invariant($"There has been no backup of the records since {site.Newest.Clock.DateOf(made):yyyy-MM-dd}: the log says why.")]
            : ["There is no backup of the records: the log says why."];
    }
}
