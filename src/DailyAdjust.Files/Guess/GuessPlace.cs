using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Guess;

/// <summary>What is known of the place that a file comes from.</summary>
/// <param name="LatitudeDeg">North positive, -90 to 90.</param>
/// <param name="LongitudeDeg">East positive, -180 to 180.</param>
/// <param name="Clock">Its clock.</param>
public sealed record GuessPlace(double LatitudeDeg, double LongitudeDeg, SiteClock Clock);
