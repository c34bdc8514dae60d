namespace DailyAdjust.Service.Sites;

/// <summary>How a round sheet that came back was handed in.</summary>
/// <param name="At">When its answers are said, UTC: as the file comes in, or when somebody says that the round was done.</param>
/// <param name="By">Who says so; empty = not said.</param>
internal sealed record RoundSaid(DateTimeOffset At, string By);
