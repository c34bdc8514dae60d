using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Service.Sites;

/// <summary>What somebody should know who logs a number, or leaves something out of a round, for one program of a box with one dial.</summary>
internal static class OneDialNote
{
    /// <summary>Null = the entry speaks of no such program.</summary>
    public static string? Of(Site site, LogEntry entry)
    {
        if (entry is { Kind: LogKind.Setting, Value: > 0, Where.Kind: PlaceKind.Program } && Others(site, entry.Where) is { Count: > 0 } others)
        {
            return $"Note: the dial is the box's. The number counts for all programs of {entry.Where.Name}, for {string.Join(" and ", others)} too; one that is off stays off.";
        }

        return entry.Kind == LogKind.Round && entry.Except.FirstOrDefault(e => Others(site, e).Count > 0) is { Name.Length: > 0 } except
            ? $"Note: the dial is the box's. Where another program of {except.Name} was done, its number counts for {except} too; where the dial was not turned, write --except {except.Name}."
            : null;
    }

    private static List<string> Others(Site site, Place where) => where.Kind != PlaceKind.Program ? []
        : [.. OneDial.Of(site, where.Name).Where(p => !where.Covers(p)).Select(p => p.ToString())];
}
