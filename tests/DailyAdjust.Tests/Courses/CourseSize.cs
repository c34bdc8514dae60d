namespace DailyAdjust.Tests.Courses;

/// <summary>How large an invented course is.</summary>
internal sealed record CourseSize
{
    /// <summary>The same seed gives the same files on every machine.</summary>
    public ulong Seed { get; init; } = 1;

    public int Stations { get; init; } = 300;

    /// <summary>Boxes; the stations are shared out evenly.</summary>
    public int Controllers { get; init; } = 8;

    /// <summary>Of each box, at most 8; each waters one kind of turf.</summary>
    public int Programs { get; init; } = 4;

    /// <summary>First day of the weather.</summary>
    public DateOnly From { get; init; } = new(2026, 1, 1);

    /// <summary>Last day of the weather.</summary>
    public DateOnly Through { get; init; } = new(2026, 7, 15);
}
