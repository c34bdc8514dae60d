using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Files.Logbook;

/// <summary>Counts entries of the same time, kind and place within a file.</summary>
internal sealed class Ordinals
{
    private readonly Dictionary<(LogTime, LogKind, Place), int> seen = [];

    public int Next((LogTime Time, LogKind Kind, Place Where) address) =>
        seen[address] = seen.TryGetValue(address, out var last) ? last + 1 : 0;
}
