using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Core.Irrigation;

/// <summary>What a probe said on one walk over a zone: the mean of its readings.</summary>
/// <param name="At">Of the last reading, UTC.</param>
/// <param name="Percent">Water content by volume, %.</param>
/// <param name="Readings">1 or more.</param>
internal readonly record struct ProbeMean(DateTimeOffset At, double Percent, int Readings)
{
    /// <summary>Readings of one zone within this of the first are one walk over it.</summary>
    private static readonly TimeSpan OneWalk = TimeSpan.FromHours(1);

    /// <summary>
    /// A zone's readings of one date, put together. Water given by hand between two of them parts them: the second then tells what came of it. So does another
    /// moisture meter.
    /// </summary>
    /// <param name="readings">With their instants, UTC; all of them probe readings of the zone.</param>
    /// <param name="byHand">Instants of the water given by hand, UTC.</param>
    public static IEnumerable<ProbeMean> Of(IEnumerable<(LogEntry Entry, DateTimeOffset At)> readings, IReadOnlyList<DateTimeOffset> byHand)
    {
        (DateTimeOffset First, DateTimeOffset Last, double Sum, int Count) walk = default;
        LogEntry? before = null;
        foreach (var (entry, at) in readings.OrderBy(r => r.At))
        {
            if (walk.Count > 0 && (at - walk.First > OneWalk || byHand.Any(w => w >= walk.Last && w < at) || IsOther(entry, before!)))
            {
                yield return new ProbeMean(walk.Last, walk.Sum / walk.Count, walk.Count);
                walk = default;
            }

            walk = (walk.Count == 0 ? at : walk.First, at, walk.Sum + entry.Value!.Value, walk.Count + 1);
            before = entry;
        }

        if (walk.Count > 0)
        {
            yield return new ProbeMean(walk.Last, walk.Sum / walk.Count, walk.Count);
        }
    }

    /// <summary>Made with another moisture meter or other rods: nobody takes the mean of the two.</summary>
    private static bool IsOther(LogEntry one, LogEntry other) => !string.Equals(one.Instrument, other.Instrument, StringComparison.Ordinal) || one.RodLengthM != other.RodLengthM;
}
