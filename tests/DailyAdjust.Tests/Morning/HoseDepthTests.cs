using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Advice;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Morning;

/// <summary>What the hose is to bring: ground that holds little, 5 mm a day drawn between 05:00 and 20:00, a start of 10 mm at 04:00 that has run this morning.</summary>
public class HoseDepthTests
{
    [Fact]
    public void No_more_than_the_ground_can_take_when_the_round_is_done()
    {
        // Full at 05:00, 5 mm down in the evening and no start before Monday next. What is drawn by 13:00 is what the second, plain balance's sun says.
        var course = Watered(allowableMm: 4, new WaterDays.Weekdays([DayOfWeek.Monday]));
        var zone = Assert.Single(course.Sheet().Driest);
        Assert.Equal(5 * PlainSun.Of(course.Site, SmallCourse.Monday).ShareDrawnBy(new(2026, 5, 4, 13, 0, 0, TimeSpan.Zero)), zone.ShortMm, 6);
        Assert.InRange(zone.ShortMm, 2.5, 3.5); // around noon, of 5 mm
        Assert.Equal("goes past the allowable today", zone.Why.ToString());
    }

    [Theory]
    [InlineData(4, 1.0)]
    [InlineData(4.6, null)] // 0.4 mm are not worth the hose
    public void Where_tonight_s_start_brings_enough_what_lacks_until_then(double allowableMm, double? hosedMm)
    {
        var sheet = Watered(allowableMm, WaterDays.Every).Sheet();
        Assert.Equal(hosedMm is { } mm ? [mm] : [], sheet.Driest.Select(d => Math.Round(d.ShortMm, 9)));
    }

    [Fact]
    public void Where_it_brings_too_little_what_lacks_beside_it()
    {
        // 20 - 2 mm are missing at 05:00 and 23 in the evening; the dial's end gives 4 in the night. Nothing is left empty: 19 beside it, of which the ground takes 18 and half a day's draw.
        var course = Watered(10, WaterDays.Every) with { DepletionMm = [20], Controller = Box(WaterDays.Every) with { PercentMax = 200 } };
        course = course with { Stations = [SmallCourse.Station(1, area: Area(10), minutes: 12)] };
        var zone = Assert.Single(course.Sheet().Driest);
        var tonight = zone.ShortMm + 4;
        Assert.InRange(tonight, 22, 23); // stressed turf draws a little less than 5 mm
        Assert.Equal("is past the allowable", zone.Why.ToString());
    }

    [Fact]
    public void A_due_run_ends_when_its_box_is_done_with_it()
    {
        var box = SmallCourse.Box with { Overlap = ProgramOverlap.Stack, Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "22:30")] };
        var course = new SmallCourse { Controller = box, Stations = [SmallCourse.Station(1, programs: "P1"), SmallCourse.Station(2, programs: "P2")], DepletionMm = [5, 5] };
        Assert.Equal(["22:00-23:00", "22:30-00:00"], Times(course));
        Assert.Equal(["22:00-23:00", "22:30-23:30"], Times(course with { Controller = box with { Overlap = ProgramOverlap.Together } }));
    }

    private static IEnumerable<string> Times(SmallCourse course) => course.Sheet().DueRuns.Select(r => $"{r.Start:HH:mm}-{r.Finishes:HH:mm}");

    private static SmallCourse Watered(double allowableMm, WaterDays days) => new() { Controller = Box(days), Stations = [SmallCourse.Station(1, area: Area(allowableMm))], DepletionMm = [6] };

    private static Controller Box(WaterDays days) => SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "04:00") with { Days = days }] };

    private static Area Area(double allowableMm) => SmallCourse.Area with { AllowableDepletion = allowableMm / 100 };
}
