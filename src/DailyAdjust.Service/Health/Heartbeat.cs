using System.Globalization;
using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Records;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Health;

/// <summary>
/// HOME/heartbeat.txt: written after a morning, and only when no site has a morning that is due and not issued. A monitor that looks at the file's age,
/// and at nothing else, learns of everything that keeps a sheet from being made: a dead service, a full disk, a broken description.
/// </summary>
public static class Heartbeat
{
    /// <summary>When it beat last, UTC; null = there is none that can be read.</summary>
    public static DateTimeOffset? Of(HomeFolder home)
    {
        try
        {
            var first = File.ReadLines(home.HeartbeatFile).FirstOrDefault() ?? "";
            return DateTimeOffset.TryParseExact(first, "yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var at) ? at : null;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Writes it where every site that has a description has its newest due sheet.</summary>
    /// <returns>Whether it beat.</returns>
    /// <exception cref="IOException">The disk refused.</exception>
    public static bool Beat(HomeFolder home, DateTimeOffset now)
    {
        var lines = new List<string>();
        foreach (var site in home.Sites())
        {
            if (!IsDone(site, now, out var sheet))
            {
                return false;
            }

            if (sheet is not null)
            {
                lines.Add($"{site.Name} {sheet}");
            }
        }

        if (lines.Count > 0)
        {
            AtomicFile.Write(home.HeartbeatFile, string.Join('\n', lines.Prepend(now.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture))) + "\n");
        }

        return lines.Count > 0;
    }

    /// <param name="sheet">The newest one; null = the site has never had a morning, and owes none.</param>
    private static bool IsDone(SiteFolder folder, DateTimeOffset now, out string? sheet)
    {
        sheet = null;
        try
        {
            if (!SiteLedger.IsThere(folder.LedgerFile))
            {
                return true;
            }

            using var site = OpenSite.Open(folder, LedgerMode.Read);
            if (site.Versions.Count == 0)
            {
                return true;
            }

            var last = site.Ledger.Mornings.Last();
            var plan = MorningPlan.Of(site, now, TimeSpan.Zero);
            sheet = last is null ? null : FormattableString.Invariant($"{last.Date:yyyy-MM-dd}/{last.Issue}");
            return plan.Issue is null && plan.Missed.Count == 0 && last?.Step != MorningStep.Missed && site.Ledger.Mornings.Unfinished().Count == 0;
        }
        catch (Exception failure) when (failure is LedgerException or InvalidDataException)
        {
            return false;
        }
    }
}
