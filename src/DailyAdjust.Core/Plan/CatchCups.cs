using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Plan;

/// <summary>The catch cups of one run.</summary>
/// <param name="Stations">
/// Which ran: one, or several that water the same ground, one after the other and each as long. A station's zone is then its part of that ground, so that all of
/// them have the rate of the whole.
/// </param>
/// <param name="Minutes">How long each ran, above 0.</param>
/// <param name="DepthsMm">Of each cup, mm, 0 or more; at least <see cref="CatchAudit.FewestCups"/>, not all 0.</param>
/// <param name="WindMPerS">While it ran, m/s; null = not written down.</param>
public sealed record CatchCups(IReadOnlyList<Station> Stations, double Minutes, IReadOnlyList<double> DepthsMm, double? WindMPerS = null);
