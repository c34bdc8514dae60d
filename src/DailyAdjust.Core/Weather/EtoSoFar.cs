namespace DailyAdjust.Core.Weather;

/// <summary>What was measured of a running day's reference ET.</summary>
/// <param name="Mm">From 00:00, mm, 0 or more, on a grid of 1e-6.</param>
/// <param name="Through">End of the last hour that is known together with all before it, UTC.</param>
/// <param name="Station">Whose hours they are.</param>
/// <param name="IsSupplied">The station's own figure, because the site says so.</param>
public sealed record EtoSoFar(double Mm, DateTimeOffset Through, string Station, bool IsSupplied)
{
    /// <summary>
    /// The first station in the site's order whose hours reach as far as anybody's, give or take what counts as a short gap: nobody stands in for a station that is only late.
    /// Null where no station knows the day's first hour.
    /// </summary>
    /// <param name="stations">In the site's order, with nothing later than the instant in them.</param>
    internal static EtoSoFar? Of(IReadOnlyList<StationEto> stations)
    {
        List<EtoSoFar> known = [.. stations.Select(s => s.SoFar()).OfType<EtoSoFar>()];
        return known.Find(k => k.Through + ShortGaps.Longest >= known.Max(other => other.Through));
    }
}
