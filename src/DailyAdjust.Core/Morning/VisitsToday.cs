using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>
/// Every box as if somebody came to it this morning, planned or not. Each is reckoned by itself and by the logbook as it stands: the others are left as they
/// are, and no number is cut to fit the night or the pump.
/// </summary>
/// <param name="Site">The description of the date.</param>
/// <param name="Date">The morning.</param>
/// <param name="NoAdvice">Why there is no sound advice; null = there is.</param>
/// <param name="Boxes">In the order in which they are worth opening.</param>
public sealed record VisitsToday(Site Site, DateOnly Date, Phrase? NoAdvice, IReadOnlyList<BoxVisit> Boxes)
{
    /// <summary>Dates of earlier sheets whose round nobody has answered, ascending: here it counts as not done.</summary>
    public IReadOnlyList<OpenRound> UnansweredRounds { get; init; } = [];
}
