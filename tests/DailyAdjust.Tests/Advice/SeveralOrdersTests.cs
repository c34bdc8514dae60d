using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>Orders and watering rules that stop a program only together, or only a part of its ground. The start is at 22:00.</summary>
public class SeveralOrdersTests
{
    private static readonly DateOnly Monday = SmallCourse.Monday;
    private static readonly Area Greens = SmallCourse.Area with { Name = "greens" };

    [Fact]
    public void Orders_that_stop_all_of_it_together_are_off_until_the_last_of_them_ends()
    {
        var advice = (Mixed() with { Log = [Order(LogKind.NoWater, Over("greens"), Monday), Order(LogKind.Hold, Over("ground"), Monday.AddDays(2)) with { Note = "drain work" }] }).Advice();
        Assert.Equal((AdviceKind.Off, Monday.AddDays(2)), (advice.Advice, advice.OffUntil!.Value));
        Assert.Contains("no water", advice.Reason.ToString(), StringComparison.Ordinal);
        Assert.Contains("hold: drain work", advice.Reason.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_number_is_made_for_the_ground_that_may_run()
    {
        // At 10 mm in a start at 100 % the ground, stressed at 60 mm (Ks 0.8), asks for 60 + 4 mm, the greens for 40 + 5.
        Assert.Equal(640, Mixed().Advice().ExactPercent!.Value, 3);
        var held = (Mixed() with { Log = [Order(LogKind.Hold, Over("ground"), Monday)] }).Advice();
        Assert.Equal(450, held.ExactPercent!.Value, 3);
        Assert.Equal([new StationKey("C1", "1")], Assert.Single(held.StationsOut).Stations);
        Assert.Null(held.Zones[0].Percent);

        var station = (Mixed() with { Log = [Order(LogKind.Hold, new(PlaceKind.Station, "C1", "1"), Monday)] }).Advice();
        Assert.Equal((450, "hold"), (Math.Round(station.ExactPercent!.Value, 3), station.StationsOut[0].Why.ToString()));
    }

    [Fact]
    public void A_start_that_a_watering_rule_forbids_is_taken_out_and_the_others_bring_the_water()
    {
        var course = SmallCourse.OneStation(25) with
        {
            Controller = SmallCourse.Box with { PercentMax = 600, Programs = [SmallCourse.EveryNight("P1", "02:00", "22:00")] },
            Stations = [SmallCourse.Station(1, minutes: 30, area: SmallCourse.Area with { AllowableDepletion = 0.2 })],
            Restrictions = [Hours("no evenings", 20, 23)],
        };
        var advice = course.Advice();
        Assert.Equal((AdviceKind.Set, 500d), (advice.Advice, advice.Percent!.Value)); // as with an order: see OrderTests
        Assert.Equal("watering rule: no evenings", Assert.Single(advice.TakenOut).Why.ToString());

        var both = (course with { Restrictions = [Hours("no evenings", 20, 23), Hours("no nights", 1, 4)] }).Advice();
        Assert.Equal((AdviceKind.Off, "Must not run: watering rule: no evenings; watering rule: no nights."), (both.Advice, both.Reason.ToString()));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_rule_over_a_part_of_the_ground_takes_out_its_stations(bool hours)
    {
        // Monday the 4th is an even date, and the start is at 22:00.
        Restriction rule = new() { Name = "rough", Areas = ["ground"], DaysNotAllowed = hours ? null : new WaterDays.EvenDays(), HoursNotAllowed = hours ? new(new(21, 0), new(23, 0)) : null };
        var advice = (Mixed() with { Restrictions = [rule] }).Advice();
        Assert.Equal(450, advice.ExactPercent!.Value, 3); // as with a hold over the same ground
        var station = Assert.Single(advice.StationsOut);
        Assert.Equal([new StationKey("C1", "1")], station.Stations);
        Assert.Equal(("watering rule: rough", hours ? null : Monday), (station.Why.ToString(), station.Until?.Date));
        Assert.Empty(advice.TakenOut);

        // With one over the rest, or an order, nothing is left of the program.
        Restriction rest = rule with { Name = "greens", Areas = [Greens.Name] };
        Assert.Equal(AdviceKind.Off, (Mixed() with { Restrictions = [rule, rest] }).Advice().Advice);
        Assert.Equal(AdviceKind.Off, (Mixed() with { Restrictions = [rule], Log = [Order(LogKind.NoWater, Over(Greens.Name), Monday)] }).Advice().Advice);
        var all = (Mixed() with { Restrictions = [rule with { Name = "all", Areas = [] }] }).Advice();
        Assert.Equal((AdviceKind.Off, hours ? "Must not run: watering rule: all." : "Must not run: watering rule: all, through Mon 4 May; its next start that may run is on Tue 5 May."), (all.Advice, all.Reason.ToString()));
    }

    [Fact]
    public void A_ceiling_of_nothing_takes_out_the_stations_of_its_area_and_not_the_greens()
    {
        var stage = new DroughtStage { Name = "stage 2", MostPercent = 50, CutOrder = ["ground"] };
        var course = Mixed() with
        {
            Described = s => s with { Stages = [stage] },
            Log = [new() { Time = new(Monday, null), Kind = LogKind.Stage, Where = All, Text = "stage 2" }],
        };
        var advice = course.Advice();
        Assert.Equal([new StationKey("C1", "1")], Assert.Single(advice.StationsOut).Stations);
        Assert.Equal((AdviceKind.Leave, 100d), (advice.Advice, advice.Percent!.Value)); // 450 % are wanted, the stage leaves the greens the 100 they are set to
        Assert.Equal([0d, 100d], course.Sheet().Exceptions.Stage!.Ceilings.Select(c => c.Percent));
    }

    [Theory]
    [InlineData(80, 60, 100)] // of 200 shares of water 160 are left: all 40 come off the rough
    [InlineData(40, 0, 80)] // 80 are left: the rough gives its 100, the rest comes off the greens
    public void A_stage_cuts_in_its_order(double most, double ground, double greens)
    {
        var course = Mixed() with { Described = s => s with { Stages = [new DroughtStage { Name = "s", MostPercent = most, CutOrder = ["ground"] }] } };
        LogEntry begins = new() { Time = new(Monday.AddDays(-3), null), Kind = LogKind.Stage, Where = All, Text = "s" };
        Assert.Equal([ground, greens], (course with { Log = [begins] }).Sheet().Exceptions.Stage!.Ceilings.Select(c => c.Percent));
        Assert.Null((course with { Log = [begins, begins with { Time = new(Monday, new(4, 0)), Text = "none" }] }).Sheet().Exceptions.Stage);
    }

    private static readonly Place All = new(PlaceKind.Site, "", "");

    private static Place Over(string area) => new(PlaceKind.Area, area, "");

    /// <summary>Rough 60 mm down and greens 40 mm down, of equal size, in one program.</summary>
    private static SmallCourse Mixed() => new()
    {
        Controller = SmallCourse.Box with { PercentMax = 1000, PercentMin = 5 },
        Stations = [SmallCourse.Station(1), SmallCourse.Station(2, area: Greens)],
        DepletionMm = [60, 40],
    };

    private static Restriction Hours(string name, int from, int until) => new() { Name = name, HoursNotAllowed = new(new(from, 0), new(until, 0)) };

    private static LogEntry Order(LogKind kind, Place where, DateOnly until) =>
        new() { Time = new(Monday.AddDays(-1), new(9, 0)), Kind = kind, Where = where, Until = new(until, null) };
}
