namespace DailyAdjust.Core.Sites;

/// <summary>A switch at a box that keeps its valves shut after rain, whatever the programs do.</summary>
/// <param name="Mm">Rain from which it opens the circuit, mm, above 0.</param>
/// <param name="DryAfter">How long after the last rain it lets water run again, above 0.</param>
public sealed record RainSwitch(double Mm, TimeSpan DryAfter)
{
    /// <summary>The longest <see cref="DryAfter"/>, days.</summary>
    public const int MostDays = 7;

    /// <summary>The gauge that stands for it; null = the one of most of the box's stations.</summary>
    public string? Gauge { get; init; }
}
