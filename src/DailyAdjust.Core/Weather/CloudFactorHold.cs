namespace DailyAdjust.Core.Weather;

/// <summary>
/// The cloud factor from hour to hour: computed while the sun stands high enough, held while it does not, across midnight.
/// Source: [ASCE05] eqs 45 and 46.
/// </summary>
/// <param name="Factor">The factor that holds for the hour last taken in, 0.055 to 1.</param>
/// <param name="ComputedUntil">End of the hour that it was computed from; null = none yet.</param>
internal readonly record struct CloudFactorHold(double Factor, DateTimeOffset? ComputedUntil)
{
    /// <summary>Below it the ratio of two small numbers says nothing of clouds. Source: [ASCE05] eq. 46.</summary>
    public const double LeastElevationRad = 0.3;

    private static readonly TimeSpan LongestHold = TimeSpan.FromDays(1);

    /// <summary>Before the record's first hour with a high sun.</summary>
    public static CloudFactorHold Start => new(Radiation.CloudFactor(Radiation.UnknownClearness), null);

    /// <summary>Takes in one hour.</summary>
    /// <param name="begin">Its begin.</param>
    /// <param name="end">Its end.</param>
    /// <param name="elevationRad">Of the sun at mid-hour.</param>
    /// <param name="solarMJPerM2">NaN = unknown.</param>
    /// <param name="clearSkyMJPerM2">Of the same hour.</param>
    public CloudFactorHold Next(DateTimeOffset begin, DateTimeOffset end, double elevationRad, double solarMJPerM2, double clearSkyMJPerM2)
    {
        if (elevationRad >= LeastElevationRad && !double.IsNaN(solarMJPerM2))
        {
            return new(Radiation.CloudFactor(solarMJPerM2, clearSkyMJPerM2), end);
        }

        return ComputedUntil is { } until && begin - until <= LongestHold ? this : Start;
    }
}
