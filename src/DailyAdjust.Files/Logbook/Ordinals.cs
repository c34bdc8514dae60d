using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Files.Logbook;

/// <summary>Counts entries of the same time, kind and place within a file.</summary>
internal sealed class Ordinals
{
    private readonly Dictionary<(LogTime, LogKind, Place), int> _seen = [];

    public int Next((LogTime Time, LogKind Kind, Place Where) address) =>
        _seen[address] = _seen.TryGetValue(address, out var last) ? last + 1 : 0;
}
