namespace DailyAdjust.Core.Sites;

/// <summary>How far back a day looks: no result of a day rests on anything older, but on the depletions that are carried.</summary>
public static class LookBack
{
    /// <summary>Days before the day itself.</summary>
    public const int Days = 45;

    /// <summary>How far back a sheet speaks of single zones: when one was last full or probed, and its moisture. Never less than <see cref="Days"/>.</summary>
    public const int DaysShown = 60;
}
