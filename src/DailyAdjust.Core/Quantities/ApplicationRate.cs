namespace DailyAdjust.Core.Quantities;

/// <summary>How fast water falls on, or enters, the ground, in mm per hour. The default is 0 mm/h.</summary>
/// <param name="MmPerHour">The rate in mm/h (a precipitation rate or an intake rate).</param>
public readonly record struct ApplicationRate(double MmPerHour)
{
    /// <summary>
    /// The precipitation rate of a flow spread over an area: 60 × (L/min) / m², in mm/h
    /// (the same as 96.25 × gpm / ft² in in/h).
    /// </summary>
    /// <param name="litresPerMin">Flow, L/min, 0 or more.</param>
    /// <param name="squareMetres">Area watered, m², above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The area is not above 0, or the flow is negative.</exception>
    public static ApplicationRate FromFlow(double litresPerMin, double squareMetres)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(litresPerMin);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(squareMetres);
        return new(60 * litresPerMin / squareMetres);
    }
}
