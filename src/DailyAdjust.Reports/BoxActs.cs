using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports;

/// <summary>What is to be done at the boxes beside their dials, of a morning or of a sheet as it was issued.</summary>
/// <param name="Programs">By controller in walking order.</param>
/// <param name="Exceptions">Starts and stations to put back, grow-ins.</param>
/// <param name="Words">The site's.</param>
/// <param name="AsOf">When it was said, UTC.</param>
internal sealed record BoxActs(IReadOnlyList<ProgramAdvice> Programs, SheetExceptions Exceptions, SiteWords Words, DateTimeOffset AsOf)
{
    /// <summary>"Greens 5-7 (C2/P1)", or "C2/P1" where it has no name.</summary>
    public string Label(ProgramKey key) => SheetView.Label(key, Programs);
}
