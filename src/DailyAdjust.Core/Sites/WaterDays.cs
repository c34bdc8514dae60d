namespace DailyAdjust.Core.Sites;

/// <summary>The dates on which a program starts.</summary>
public abstract record WaterDays
{
    public abstract bool Includes(DateOnly date);

    public static WaterDays Every { get; } = new EveryDay();

    public sealed record EveryDay : WaterDays
    {
        public override bool Includes(DateOnly date) => true;
    }

    public sealed record Weekdays(IReadOnlyList<DayOfWeek> Days) : WaterDays
    {
        public override bool Includes(DateOnly date) => Days.Contains(date.DayOfWeek);
    }

    /// <summary>Every n-th day counted from a date (earlier dates count too).</summary>
    public sealed record EveryNth(int Days, DateOnly From) : WaterDays
    {
        public override bool Includes(DateOnly date) => (date.DayNumber - From.DayNumber) % Days == 0;
    }

    /// <summary>Odd days of the month.</summary>
    public sealed record OddDays : WaterDays
    {
        public override bool Includes(DateOnly date) => date.Day % 2 == 1;
    }

    /// <summary>Even days of the month.</summary>
    public sealed record EvenDays : WaterDays
    {
        public override bool Includes(DateOnly date) => date.Day % 2 == 0;
    }
}

/// <summary>The dates on which somebody comes to the controller.</summary>
public abstract record VisitDays
{
    public abstract bool Includes(DateOnly date);

    public static VisitDays Daily { get; } = new EveryDay();

    public sealed record EveryDay : VisitDays
    {
        public override bool Includes(DateOnly date) => true;
    }

    public sealed record Weekdays(IReadOnlyList<DayOfWeek> Days) : VisitDays
    {
        public override bool Includes(DateOnly date) => Days.Contains(date.DayOfWeek);
    }

    /// <summary>Once a month; a day that the month lacks is its last.</summary>
    public sealed record DayOfMonth(int Day) : VisitDays
    {
        public override bool Includes(DateOnly date) => date.Day == Math.Min(Day, DateTime.DaysInMonth(date.Year, date.Month));
    }
}
