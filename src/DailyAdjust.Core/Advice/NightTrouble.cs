using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Something of a night that does not fit and that smaller numbers could mend.</summary>
/// <param name="Programs">Those that have a part in it.</param>
/// <param name="What">The same text for the same starts in each other's way, whatever their numbers are.</param>
internal sealed record NightTrouble(IReadOnlyList<ProgramKey> Programs, string What);
