using DailyAdjust.Tests.Plain;

namespace DailyAdjust.Tests.Courses;

/// <summary>How large an invented course is.</summary>
internal sealed record CourseSize
{
    /// <summary>The same seed gives the same files on every machine.</summary>
    public ulong Seed { get; init; } = 1;

    public int Stations { get; init; } = 300;

    /// <summary>Boxes; the stations are shared out evenly, and each program needs one.</summary>
    public int Controllers { get; init; } = 8;

    /// <summary>Of each box, at most 8; each waters one kind of turf.</summary>
    public int Programs { get; init; } = 4;

    /// <summary>First day of the weather.</summary>
    public DateOnly From { get; init; } = new(2026, 1, 1);

    /// <summary>Last day of the weather.</summary>
    public DateOnly Through { get; init; } = new(2026, 7, 15);

    /// <summary>A small one of a few weeks; how large is of the seed, too.</summary>
    public static CourseSize Small(ulong seed, DateOnly through)
    {
        var dice = new Dice(seed);
        var (controllers, programs) = (dice.Whole(1, 4), dice.Whole(1, 6));
        return new()
        {
            Seed = seed,
            Stations = (controllers * programs) + dice.Whole(0, 20),
            Controllers = controllers,
            Programs = programs,
            From = through.AddDays(-dice.Whole(4, 45)),
            Through = through,
        };
    }
}
