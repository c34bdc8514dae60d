namespace DailyAdjust.Core.Plan;

/// <summary>How evenly a golf sprinkler system spreads its water. Source: Golf Course Management: 80 % excellent, 70 % expected, 55 % and less poor.</summary>
public enum UniformityClass
{
    /// <summary>55 % and less.</summary>
    Poor,

    /// <summary>Between poor and what is expected.</summary>
    BelowExpected,

    /// <summary>From 70 %.</summary>
    Expected,

    /// <summary>From 80 %.</summary>
    Excellent,
}
