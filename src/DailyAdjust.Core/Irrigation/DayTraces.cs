namespace DailyAdjust.Core.Irrigation;

/// <summary>What tells how wet a zone is, whatever it was before.</summary>
[Flags]
internal enum ZoneTrace : byte
{
    None = 0,

    /// <summary>Water drained from it: it was full.</summary>
    Filled = 1,

    /// <summary>Somebody probed it.</summary>
    Probed = 2,
}

/// <summary>One day of every zone in a few bytes: a sheet speaks of two months of them, and wants whole zone days of the last two weeks alone.</summary>
/// <param name="Date">The day.</param>
/// <param name="EtoMm">Reference ET, mm.</param>
/// <param name="Zones">In station order, of the site as it was that day.</param>
/// <param name="BeforeMm">Depletion of each at the beginning of the day, mm.</param>
/// <param name="Seen">Of each, what was seen.</param>
internal sealed record DayTraces(DateOnly Date, double EtoMm, IReadOnlyList<ZonePlan> Zones, double[] BeforeMm, ZoneTrace[] Seen);
