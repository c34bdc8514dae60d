using System.Collections.Concurrent;
using System.Security.Cryptography;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;
using DailyAdjust.Ledger;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Fetching;

/// <summary>The way of a pulled file into the inbox, from where it goes the way of every other file.</summary>
/// <param name="folder">The site's.</param>
/// <param name="source">Whose file it is.</param>
/// <param name="time">The clock.</param>
internal sealed class PulledFile(SiteFolder folder, WeatherSource source, TimeProvider time)
{
    /// <summary>The most files of one address that wait in the inbox under numbered names.</summary>
    private const int MostNames = 40;

    private readonly ConcurrentDictionary<(string Path, long Length, DateTime Modified), string?> _refused = [];

    public static string ShaOf(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    /// <summary>Whether the file before it still has to be taken.</summary>
    public bool Waits(string name) => Path.Exists(Path.Combine(folder.Inbox, name));

    /// <summary>Whether bytes came in before: the ledger has them, or they were refused and still lie there.</summary>
    public bool IsKnown(string sha) => LedgerHolds(sha) || Refused(sha);

    /// <summary>Puts bytes into the inbox; null = the name is not free.</summary>
    /// <param name="name">The name that site.yaml gives it.</param>
    /// <param name="bytes">All of it.</param>
    /// <param name="taken">Names given in this pull: a second file of the same name gets a number, where the pattern allows it.</param>
    /// <exception cref="PullException">The inbox is gone, or the disk refused.</exception>
    public string? Put(string name, byte[] bytes, HashSet<string> taken)
    {
        foreach (var free in Names(name).Where(n => Fits(n) && !taken.Contains(n)))
        {
            try
            {
                if (Inbox.PutWhole(folder, free, bytes, time))
                {
                    taken.Add(free);
                    return free;
                }
            }
            catch (DirectoryNotFoundException failure)
            {
                throw new PullException("the inbox is gone", passing: false, failure);
            }
            catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
            {
                throw new PullException($"it could not be written into the inbox ({failure.Message.TrimEnd('.')})", passing: false, failure);
            }

            if (taken.Count == 0)
            {
                break;
            }
        }

        return null;
    }

    private static IEnumerable<string> Names(string name) => Enumerable.Range(1, MostNames).Select(count => AtomicFile.Numbered(name, count));

    private bool Fits(string name) => ReadingsFile.Fits(source.Files, name);

    private bool LedgerHolds(string sha)
    {
        if (!File.Exists(folder.LedgerFile))
        {
            return false;
        }

        try
        {
            using var ledger = SiteLedger.Open(folder.LedgerFile, LedgerMode.Read);
            return ledger.Files.Holds(source.Id, sha);
        }
        catch (LedgerException)
        {
            // Whoever writes it tells; the file is then asked for in full.
            return false;
        }
    }

    private bool Refused(string sha)
    {
        try
        {
            return Directory.Exists(folder.Refused) && new DirectoryInfo(folder.Refused).EnumerateFiles()
                .Where(file => file.LinkTarget is null && Fits(file.Name))
                .Any(file => string.Equals(ShaOfRefused(file), sha, StringComparison.Ordinal));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    /// <summary>Read once as it stands; null = it cannot be read.</summary>
    private string? ShaOfRefused(FileInfo file)
    {
        var stands = (file.FullName, file.Length, file.LastWriteTimeUtc);
        if (_refused.TryGetValue(stands, out var known))
        {
            return known;
        }

        using var opened = RegularFile.Open(file.FullName, file.Length);
        using var bytes = opened.File?.Open();
        return _refused[stands] = bytes is null ? null : Convert.ToHexStringLower(SHA256.HashData(bytes));
    }
}
