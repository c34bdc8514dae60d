using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Irrigation;

/// <summary>What one start, or a hand, gave a station.</summary>
/// <param name="Date">Of the balance.</param>
/// <param name="Program">Whose start; null = started by hand.</param>
/// <param name="At">The start, UTC; null = started by hand.</param>
/// <param name="Station">Which.</param>
/// <param name="Minutes">Gross, 0 or more.</param>
/// <param name="LeftOutMinutes">Of a program that was off: what the start would have run at the percentage before; else 0.</param>
internal readonly record struct StationWater(DateOnly Date, ProgramKey? Program, DateTimeOffset? At, Station Station, double Minutes, double LeftOutMinutes)
{
    /// <summary>Estimated from the station's flow, L; 0 where that is not known.</summary>
    public double Litres => Minutes * (Station.FlowLPerMin ?? 0);

    /// <summary>The same of what was left out.</summary>
    public double LeftOutLitres => LeftOutMinutes * (Station.FlowLPerMin ?? 0);
}
