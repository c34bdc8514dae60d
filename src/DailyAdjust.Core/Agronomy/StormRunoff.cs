namespace DailyAdjust.Core.Agronomy;

/// <summary>Runoff of a day's rain by curve number. Source: [TR55] eqs 2-1 to 2-4, p. 2-1, in mm.</summary>
public static class StormRunoff
{
    private const double InitialAbstractionShare = 0.2;

    /// <summary>Potential maximum retention S, mm. Source: [TR55] eq. 2-4 (S = 1000/CN − 10 in).</summary>
    /// <param name="curveNumber">Above 0, at most 100.</param>
    public static double RetentionMm(double curveNumber) => (25400 / curveNumber) - 254;

    /// <summary>Runoff depth, mm, between 0 and the rain.</summary>
    /// <param name="rainMm">The day's rain, mm, 0 or more.</param>
    /// <param name="curveNumber">Above 0, at most 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">Out of these ranges.</exception>
    public static double OfDay(double rainMm, double curveNumber)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(rainMm);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(curveNumber);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(curveNumber, 100);
        var retention = RetentionMm(curveNumber);
        var abstraction = InitialAbstractionShare * retention;
        if (rainMm <= abstraction)
        {
            return 0;
        }

        var beyond = rainMm - abstraction;
        return beyond * beyond / (beyond + retention);
    }
}
