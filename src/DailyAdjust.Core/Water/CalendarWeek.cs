namespace DailyAdjust.Core.Water;

/// <summary>Weeks from Monday to Sunday.</summary>
public static class CalendarWeek
{
    /// <summary>The last one that is over when a date begins.</summary>
    public static (DateOnly Monday, DateOnly Sunday) LastBefore(DateOnly date)
    {
        var monday = MondayOf(date).AddDays(-7);
        return (monday, monday.AddDays(6));
    }

    /// <summary>The Monday of a date's week.</summary>
    public static DateOnly MondayOf(DateOnly date) => date.AddDays(-(((int)date.DayOfWeek + 6) % 7));
}
