using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Words;
using DailyAdjust.Tests.Advice;
using Xunit;

namespace DailyAdjust.Tests.Plan;

/// <summary>Base programs for the peak month. ETo 5 mm a day in every month, K 1, 10 mm an hour: a day takes 30 minutes.</summary>
public class BasePlanTests
{
    private const double GallonL = 3.785411784;
    private static readonly WateringWindow Night = new(new(21, 0), new(6, 0));

    [Fact]
    public void A_daily_program_gets_the_minutes_of_a_day_and_keeps_its_start()
    {
        var program = Assert.Single(Plan(SmallCourse.OneStation(0)).Programs);
        Assert.Equal(30, Assert.Single(program.Stations).Minutes);
        Assert.Equal([new TimeOnly(22, 0)], program.Starts);
        Assert.Equal(100, program.PercentThatFits);
    }

    [Fact]
    public void Every_third_day_carries_three_days()
    {
        var course = SmallCourse.OneStation(0) with
        {
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00") with { Days = new WaterDays.EveryNth(3, SmallCourse.Monday) }] },
        };
        Assert.Equal(90, Plan(course).Programs[0].Stations[0].Minutes);
    }

    [Fact]
    public void Programs_of_one_box_are_laid_one_after_the_other()
    {
        var course = new SmallCourse
        {
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "22:10")] },
            Stations = [SmallCourse.Station(1, programs: "P1"), SmallCourse.Station(2, programs: "P2")],
            DepletionMm = [0, 0],
        };
        var programs = Plan(course).Programs;
        Assert.Equal([new TimeOnly(22, 0)], programs[0].Starts);
        Assert.Equal([new TimeOnly(21, 0)], programs[1].Starts);
    }

    [Fact]
    public void Two_boxes_that_the_pump_cannot_feed_at_once_take_turns()
    {
        Station OfBox(string box) => SmallCourse.Station(1) with { Key = new(box, "1"), FlowLPerMin = 60 };
        var course = SmallCourse.OneStation(0) with
        {
            Pump = 100,
            Described = site => site with { Controllers = [SmallCourse.Box, SmallCourse.Box with { Id = "C2", Route = 2 }], Stations = [OfBox("C1"), OfBox("C2")] },
        };
        var starts = Plan(course).Programs.Select(p => Assert.Single(p.Starts)).ToList();
        Assert.Equal(new TimeOnly(22, 0), starts[0]);
        Assert.True(starts[1] <= new TimeOnly(21, 30) || starts[1] >= new TimeOnly(22, 30), $"{starts[1]}");
    }

    [Fact]
    public void A_minute_in_which_one_station_ends_and_the_next_begins_asks_the_pump_for_one_of_them()
    {
        // 12.5 and 17.5 minutes at 60 L/min on either box: 120 L/min at once, never 180.
        Station Of(string box, int number, double mmPerHour) => SmallCourse.Station(number) with { Key = new(box, $"{number}"), FlowLPerMin = 60, Rate = new(mmPerHour) };
        var box = SmallCourse.Box with { MinutesStep = 0.5 };
        var course = SmallCourse.OneStation(0) with
        {
            Pump = 120,
            Described = site => site with
            {
                Controllers = [box, box with { Id = "C2", Route = 2 }],
                Stations = [Of("C1", 1, 24), Of("C1", 2, 120 / 7.0), Of("C2", 1, 24), Of("C2", 2, 120 / 7.0)],
            },
        };
        var programs = Plan(course).Programs;
        Assert.All(programs, p => Assert.Equal([12.5, 17.5], p.Stations.Select(s => s.Minutes)));
        Assert.All(programs, p => Assert.Equal([new TimeOnly(22, 0)], p.Starts));
        Assert.Equal(new TimeOnly(21, 0), Plan(course with { Pump = 119 }).Programs[1].Starts[0]);
    }

    [Fact]
    public void Where_water_would_run_off_the_day_is_split_with_time_to_soak()
    {
        // Longest cycle 60 × 1.25 / (10 - 5) = 15 min, soak 60 × 1.25 / 5 = 15 min: two cycles of 15, half an hour from start to start.
        var area = SmallCourse.Area with { Soil = SmallCourse.Area.Soil with { IntakeRate = new(5), SurfaceStorage = new(1.25) } };
        var program = Assert.Single(Plan(SmallCourse.OneStation(0, area)).Programs);
        Assert.Equal(15, program.Stations[0].Minutes);
        Assert.Equal([new TimeOnly(21, 0), new TimeOnly(21, 30)], program.Starts);
    }

    /// <summary>Superintendent's published figures 2012: 1500 gpm for 9 h gave 0.14 in; summer ET is 0.28 in a day.</summary>
    [Fact]
    public void A_full_refill_does_not_fit_the_night()
    {
        const double FlowLPerMin = 1500 * GallonL;
        var groundM2 = FlowLPerMin * 9 * 60 / (0.14 * Depth.MmPerInch);
        var station = SmallCourse.Station(1, groundM2) with { FlowLPerMin = FlowLPerMin, Rate = ApplicationRate.FromFlow(FlowLPerMin, groundM2) };
        var site = (SmallCourse.OneStation(0) with { Stations = [station], Pump = FlowLPerMin, Window = Night }).Site;
        var plan = BasePlan.Of(site, [.. Enumerable.Repeat(0.28 * Depth.MmPerInch, 12)]);
        Assert.Equal(50, Assert.Single(plan.Programs).PercentThatFits);
        var supply = NightSupply.Of(site, plan)!;
        Assert.False(supply.Suffices);
        Assert.Equal(18, supply.HoursNeeded!.Value, 1e-9);
        Assert.Contains(PlanWords.Of(site, plan), s => s.StartsWith("A full refill does not fit the night", StringComparison.Ordinal));
        Assert.Contains(PlanWords.Of(site, plan), s => s.Contains("only 50 % of its minutes fit from 21:00 to 06:00", StringComparison.Ordinal));
    }

    /// <summary>Golf Course Industry 2016: 322000 gal in 6 h = 894.4 gpm.</summary>
    [Fact]
    public void Capacity_that_a_night_needs() =>
        Assert.Equal(894.4, new NightSupply(322000 * GallonL, 1, 360, null).CapacityNeededLPerMin / GallonL, 0.05);

    [Fact]
    public void Hours_that_the_place_forbids_take_no_start()
    {
        var course = SmallCourse.OneStation(0) with { Restrictions = [new() { Name = "evening", HoursNotAllowed = new(new(20, 0), new(23, 0)) }] };
        Assert.Equal([new TimeOnly(23, 0)], Plan(course).Programs[0].Starts);
    }

    private static PlanResult Plan(SmallCourse course)
    {
        var site = (course with { Window = Night }).Site;
        return BasePlan.Of(site, site.Weather.Normals!.EtoMmPerDay);
    }
}
