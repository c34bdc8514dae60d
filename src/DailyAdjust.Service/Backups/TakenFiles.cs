using System.Security.Cryptography;
using DailyAdjust.Ledger;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Backups;

/// <summary>Files of inbox/taken that restored records do not know: they were taken after the backup was made.</summary>
internal static class TakenFiles
{
    /// <summary>Their names, in the order in which they were taken.</summary>
    public static IReadOnlyList<string> Unknown(SiteFolder site, SiteLedger ledger)
    {
        if (!Directory.Exists(site.Taken))
        {
            return [];
        }

        var known = ledger.Files.List().Select(f => f.Sha).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. new DirectoryInfo(site.Taken).EnumerateFiles()
                .Where(f => f.LinkTarget is null && !f.Name.StartsWith('.') && !f.Name.EndsWith(Inbox.WhyEnding, StringComparison.Ordinal) && !known.Contains(ShaOf(f.FullName)))
                .OrderBy(f => f.LastWriteTimeUtc).ThenBy(f => f.Name, StringComparer.Ordinal)
                .Select(f => f.Name),
        ];
    }

    /// <summary>Moves them into the inbox, from where the next look takes them.</summary>
    /// <returns>Their names there.</returns>
    public static IReadOnlyList<string> PutBack(SiteFolder site, IReadOnlyList<string> names) =>
        [.. names.Select(name => AtomicFile.MoveInto(Path.Combine(site.Taken, name), site.Inbox))];

    private static string ShaOf(string path)
    {
        using var file = File.OpenRead(path);
        return Convert.ToHexStringLower(SHA256.HashData(file));
    }
}
