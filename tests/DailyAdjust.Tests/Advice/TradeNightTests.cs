using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>Rules of the trade about the night and the pump; where each comes from stands beside it.</summary>
public class TradeNightTests
{
    private const double LitresPerGallon = 3.785411784;
    private static readonly LogEntry Off = new() { Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)), Kind = LogKind.Off, Where = new(PlaceKind.Program, "C1", "P1") };

    [Theory]
    [InlineData(894.3, 1)]
    [InlineData(894.5, 0)]
    public void A_pump_has_to_give_the_nights_gallons_in_its_hours(double gpm, int found)
    {
        // gpm = gallons / (hours × 60); 322000 gal in 6 h = 894.4: Golf Course Industry 2016.
        var flow = 322_000 / (6 * 60.0) * LitresPerGallon;
        var course = SmallCourse.OneStation(5) with
        {
            Stations = [SmallCourse.Station(1, minutes: 360) with { FlowLPerMin = flow, Rate = new(10.0 / 6) }],
            Pump = gpm * LitresPerGallon,
        };
        Assert.Equal(found, course.Sheet().Fit.Pump.Count);
    }

    [Fact]
    public void A_night_of_nine_hours_gives_half_of_a_summers_day()
    {
        // 1500 gpm for 9 h gave a course 0.14 in; its summer ET is 0.28 in a day: a superintendent's published figures, 2012.
        double given = 0.14 * Depth.MmPerInch, drawn = 0.28 * Depth.MmPerInch;
        var course = SmallCourse.OneStation(drawn - 5) with
        {
            Stations = [SmallCourse.Station(1, minutes: 540) with { Rate = new(given / 9) }],
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "21:00")] },
            Window = new(new(21, 0), new(6, 0)),
            Log = [Off],
        };
        var advice = course.Advice();
        Assert.Equal((200d, 100d), (Math.Round(advice.ExactPercent!.Value, 3), advice.Percent!.Value));
        Assert.Equal(given, advice.Shortfall!.DepthMm, 6);
        Assert.Null(Assert.Single(course.Sheet().Fit.Cuts).StartThatFits);
    }

    [Fact]
    public void Programs_of_one_box_that_overlap_run_two_stations_at_once()
    {
        // Common practice; no source. 100 L/min each: the pump is asked for 200 while they do.
        var course = new SmallCourse
        {
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "22:10")] },
            Stations = [SmallCourse.Station(1, programs: "P1") with { FlowLPerMin = 100 }, SmallCourse.Station(2, programs: "P2") with { FlowLPerMin = 100 }],
            DepletionMm = [5, 5],
            Pump = 199,
        };
        Assert.Equal(200, Assert.Single(course.Sheet().Fit.Pump).FlowLPerMin);
        Assert.Empty((course with { Controller = course.Controller with { Overlap = ProgramOverlap.Stack } }).Sheet().Fit.Pump);
    }

    [Fact]
    public void An_hour_digit_set_by_mistake_runs_an_hour_longer()
    {
        // Common practice; no source. 12 minutes keyed as 1 h 12.
        static DateTimeOffset? Ends(double minutes) => SmallCourse.OneStation(5, minutes: minutes).Advice().Finishes;
        Assert.Equal(TimeSpan.FromHours(1), Ends(72) - Ends(12));
    }
}
