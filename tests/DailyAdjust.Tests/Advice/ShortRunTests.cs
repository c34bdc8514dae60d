using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>Runs that do little but fill the pipes. 60 mm an hour: 1 mm a minute; 8 minutes at 100 %.</summary>
public class ShortRunTests
{
    private static readonly Area Area = SmallCourse.Area with { LeaveEmpty = 0.6 };

    [Fact]
    public void What_can_wait_is_left_out_where_it_would_run_too_short()
    {
        // 27 + 5 tonight, 30 may stay: 2 of 8 minutes, 25 %. With skip_below at 20 % the short run alone decides.
        var course = Course(27) with { Report = new() { SkipBelowPercent = 20 }, Log = [At(25)] };
        Assert.Equal((AdviceKind.Skip, "runs-too-short"), (course.Advice().Advice, course.Advice().Chain[0].Code));
        var off = course with { Log = [Off()] };
        Assert.Equal((AdviceKind.KeepOff, "runs-too-short"), (off.Advice().Advice, off.Advice().Chain[0].Code));
        var whole = course with { Controller = SmallCourse.Box with { LeastRunMinutes = 2 }, Log = [Off()] };
        Assert.Equal((AdviceKind.Resume, 25d), (whole.Advice().Advice, whole.Advice().Percent!.Value));
    }

    [Fact]
    public void What_runs_long_enough_as_it_is_set_and_wastes_nothing_is_not_left_out()
    {
        var course = Course(27) with { Report = new() { SkipBelowPercent = 20 } };
        Assert.Equal((AdviceKind.Leave, "good-enough"), (course.Advice().Advice, course.Advice().Chain[0].Code));

        // At 500 % 40 minutes would drain 8 mm: a number has to be set, and that would run too short.
        var wasteful = course with { Log = [At(500)], Controller = course.Controller with { PercentMax = 500 } };
        Assert.Equal((AdviceKind.Skip, "runs-too-short"), (wasteful.Advice().Advice, wasteful.Advice().Chain[0].Code));
    }

    [Fact]
    public void What_cannot_wait_is_raised()
    {
        // 51 tonight, at most 50 before tomorrow's start: 6 mm, at 4 mm a minute 1.5 of 3 minutes, which the box makes 2.
        var course = Course(46) with { Stations = [SmallCourse.Station(1, area: SmallCourse.Area with { LeaveEmpty = 0.98 }, minutes: 3) with { Rate = new(240) }], Log = [Off()] };
        Assert.Equal((AdviceKind.Resume, "raised-to-run", 50d), (course.Advice().Advice, course.Advice().Chain[0].Code, Math.Round(course.Advice().ExactPercent!.Value, 1)));
        Assert.Equal(85, course.Advice().Percent); // 2.55 minutes are 3
    }

    [Fact]
    public void A_few_short_stations_do_not_matter()
    {
        var course = Course(27) with
        {
            Report = new() { SkipBelowPercent = 20 },
            Stations = [Station(1, 8), Station(2, 8), Station(3, 16) with { GroundM2 = 300 }],
            DepletionMm = [27, 27, 27],
        };
        Assert.NotEqual("runs-too-short", course.Advice().Chain[0].Code);
    }

    private static SmallCourse Course(double depletionMm) => new() { Stations = [Station(1, 8)], DepletionMm = [depletionMm] };

    private static Station Station(int number, double minutes) => SmallCourse.Station(number, area: Area, minutes: minutes) with { Rate = new(60) };

    private static LogEntry At(double percent) => Off() with { Kind = LogKind.Setting, Value = percent, Unit = LogUnit.Percent };

    private static LogEntry Off() => new() { Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)), Kind = LogKind.Off, Where = new(PlaceKind.Program, "C1", "P1") };
}
