namespace DailyAdjust.Core.Sites;

/// <summary>What a station counts for in means and shares of ground.</summary>
public static class GroundWeight
{
    /// <summary>Each its area watered, m²; each 1 where any of them lacks it.</summary>
    /// <param name="stations">All that go into the mean or the share.</param>
    public static Func<Station, double> Of(IEnumerable<Station> stations) =>
        stations.All(s => s.GroundM2 is > 0) ? s => s.GroundM2!.Value : _ => 1;
}
