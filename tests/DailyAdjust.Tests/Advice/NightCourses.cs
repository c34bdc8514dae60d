using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Tests.Advice;

/// <summary>Courses whose nights are short. Ground that needs exactly what is set: an hour at 100 %, 10 mm.</summary>
internal static class NightCourses
{
    public static readonly Area Greens = SmallCourse.Area with { Name = "greens" };

    public static readonly Area Rough = SmallCourse.Area with { Name = "rough" };

    public static LogEntry Off(string program) => new() { Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)), Kind = LogKind.Off, Where = new(PlaceKind.Program, "C1", program) };

    public static LogEntry Set(string program, double percent) =>
        new() { Time = new(SmallCourse.Monday, new(1, 0)), Kind = LogKind.Setting, Where = new(PlaceKind.Program, "C1", program), Value = percent, Unit = LogUnit.Percent };

    /// <summary>Two that may run together, and a third that begins when they are half done and then leaves room for none of them.</summary>
    public static SmallCourse Three(string first, string second) => new()
    {
        Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", first), SmallCourse.EveryNight("P2", second), SmallCourse.EveryNight("P3", "22:30")] },
        Stations =
        [
            SmallCourse.Station(1, area: Greens, programs: "P1") with { FlowLPerMin = 100 },
            SmallCourse.Station(2, area: Greens, programs: "P2") with { FlowLPerMin = 100 },
            SmallCourse.Station(3, area: Greens, programs: "P3") with { FlowLPerMin = 200 },
        ],
        DepletionMm = [5, 5, 5],
        Pump = 200,
    };

    public static SmallCourse Two(string first, string second, IReadOnlyList<string> priority, string closes = "06:00", double? pump = null, bool stack = false, Area? secondGround = null) => new()
    {
        Controller = SmallCourse.Box with
        {
            Overlap = stack ? ProgramOverlap.Stack : ProgramOverlap.Together,
            Programs = [SmallCourse.EveryNight("P1", first), SmallCourse.EveryNight("P2", second)],
        },
        Stations = [SmallCourse.Station(1, area: Greens, programs: "P1") with { FlowLPerMin = 100 }, SmallCourse.Station(2, area: secondGround ?? Rough, programs: "P2") with { FlowLPerMin = 100 }],
        DepletionMm = [5, 5],
        Priority = priority,
        Pump = pump,
        Window = new(new(20, 0), TimeOnly.ParseExact(closes, "HH:mm", null)),
    };
}
