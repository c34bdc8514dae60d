using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Service.Sites;

/// <summary>What somebody should know who logs a number for a whole box or site: which programs that were off it says to be on.</summary>
internal static class TurnedOnNote
{
    /// <summary>Null = the entry is no such number, or nothing was off.</summary>
    /// <param name="site">Opened, without the entry in its logbook.</param>
    /// <param name="entry">What somebody adds.</param>
    public static string? Of(OpenSite site, LogEntry entry)
    {
        if (entry is not { Kind: LogKind.Setting, Value: > 0, Where.Kind: not PlaceKind.Program } || site.Versions.Count == 0)
        {
            return null;
        }

        var (log, sheets, at) = (site.Ledger.Logbook.Effective(), site.Ledger.Sheets.Issued(), entry.Time.Instant(site.Newest.Clock));
        var (before, after) = (new SettingHistory(site.Versions, log, sheets), new SettingHistory(site.Versions, [.. log, entry], sheets));
        var faults = new FaultNotes(site.Newest.Clock, log, before);
        var on = site.Newest.Controllers
            .SelectMany(c => c.Programs.Select(p => new ProgramKey(c.Id, p.Id)))
            .Where(p => entry.Where.Covers(p) && before.At(p, at).Setting.IsOff && !after.At(p, at).Setting.IsOff)
            .ToList();
        return on.Count == 0 ? null
            : $"Note: this turns on {string.Join(", ", on.Select(p => $"{p} ({Why(p)})"))}: from now on the balance takes {(on.Count == 1 ? "it" : "them")} to run. Where one is still off, say so after it: {string.Join(", ", on.Select(p => $"`log off {p}`"))}.";

        string Why(ProgramKey program) => before.At(program, at).PausedUntil is not null ? "paused"
            : "off" + (before.OffSince(program, at) is { } since ? $" since {site.Newest.Clock.ToLocal(since).ToString("yyyy-MM-dd HH:mm", System.Globalization.CultureInfo.InvariantCulture)}" : "")
                + (faults.Of(program, at) is { Note.Length: > 0 } fault ? $", \"{fault.Note}\"" : "");
    }
}
