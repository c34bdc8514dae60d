namespace DailyAdjust.Service.Health;

/// <summary>How long ago, as people say it.</summary>
internal static class Age
{
    /// <param name="age">Zero or more.</param>
    public static string InWords(TimeSpan age) => age switch
    {
        { TotalMinutes: < 90 } => FormattableString.Invariant($"{Math.Max(0, Math.Round(age.TotalMinutes)):0} min"),
        { TotalHours: < 48 } => FormattableString.Invariant($"{age.TotalHours:0} h"),
        _ => FormattableString.Invariant($"{age.TotalDays:0} days"),
    };
}
