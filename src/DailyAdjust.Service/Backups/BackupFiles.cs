using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Service.Backups;

/// <summary>One backup.</summary>
/// <param name="Path">The file.</param>
/// <param name="MadeAt">When, UTC: its name says so, for a copied file's own time may be that of the copying.</param>
public sealed record BackupFile(string Path, DateTimeOffset MadeAt);

/// <summary>Backups of one site in one folder. The files are all that is known of them: whether one is due is asked of their names.</summary>
/// <param name="folder">Where they lie; it need not be there yet.</param>
/// <param name="site">The site's name: a folder may hold other files.</param>
public sealed class BackupFiles(string folder, string site)
{
    /// <summary>So many stay however old they are: a clock that was wrong for a while must not cost all of them.</summary>
    public const int AlwaysKept = 3;

    private const string Stamp = "yyyy-MM-dd'T'HHmmss'Z'";
    private const string Part = ".part";

    /// <summary>By when they were made, oldest first.</summary>
    public IReadOnlyList<BackupFile> All() => Directory.Exists(folder)
        ? [.. Directory.EnumerateFiles(folder, $"{site}-*.db").Select(ToBackup).OfType<BackupFile>().OrderBy(b => b.MadeAt)]
        : [];

    /// <summary>The newest that was made by now; one of the future is of a clock that was wrong.</summary>
    public BackupFile? Newest(DateTimeOffset now) => All().LastOrDefault(b => b.MadeAt <= now);

    /// <summary>Where a backup of now would lie.</summary>
    public string PathAt(DateTimeOffset now) => Path.Combine(folder, $"{site}-{now.UtcDateTime.ToString(Stamp, CultureInfo.InvariantCulture)}.db");

    /// <summary>Whether the day's backup is due and not done.</summary>
    /// <param name="clock">The site's.</param>
    /// <param name="at">When it is made.</param>
    /// <param name="now">UTC.</param>
    public bool IsDue(SiteClock clock, TimeOnly at, DateTimeOffset now)
    {
        var today = clock.DateOf(now);
        var due = clock.ToInstant(today, at) is var instant && instant <= now ? instant : clock.ToInstant(today.AddDays(-1), at);
        return Newest(now) is not { } newest || newest.MadeAt < due;
    }

    /// <summary>Deletes what has been kept long enough, and what a stopped program left half made a day ago or earlier.</summary>
    public void Tidy(DateTimeOffset now, TimeSpan keep)
    {
        foreach (var old in All().SkipLast(AlwaysKept).Where(b => b.MadeAt < now - keep))
        {
            File.Delete(old.Path);
        }

        foreach (var part in Directory.EnumerateFiles(folder, $"{site}-*.db{Part}*").Where(p => File.GetLastWriteTimeUtc(p) < now.UtcDateTime.AddDays(-1)))
        {
            File.Delete(part);
        }
    }

    private BackupFile? ToBackup(string path)
    {
        var name = Path.GetFileNameWithoutExtension(path)[(site.Length + 1)..];
        return DateTimeOffset.TryParseExact(name, Stamp, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var made)
            ? new(path, made)
            : null;
    }
}
