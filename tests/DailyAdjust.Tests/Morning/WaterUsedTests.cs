using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Water;
using DailyAdjust.Tests.Advice;
using DailyAdjust.Tests.Irrigation;
using Xunit;

namespace DailyAdjust.Tests.Morning;

/// <summary>Metered water of the month, litres. The morning is 4 May 2026.</summary>
public class WaterUsedTests
{
    private static readonly Place Site = new(PlaceKind.Site, "", "");
    private static readonly Place FirstBox = new(PlaceKind.Controller, "C1", "");
    private static readonly Place SecondBox = new(PlaceKind.Controller, "C2", "");

    [Fact]
    public void A_meter_counts_from_its_last_reading_before_the_month() =>
        Assert.Equal(700, Metered(Read(Site, -9, 50), Read(Site, -4, 100), Read(Site, -1, 800)));

    [Fact]
    public void One_reading_says_nothing_of_what_was_used() => Assert.Null(Metered(Read(Site, -1, 800)));

    [Fact]
    public void Readings_of_two_meters_are_never_taken_for_one_meters() =>
        Assert.Equal(30 + 5, Metered(Read(FirstBox, -4, 100), Read(SecondBox, -4, 9000), Read(SecondBox, -2, 9005), Read(FirstBox, -1, 130)));

    [Fact]
    public void Water_that_went_through_the_sites_meter_and_a_boxs_is_counted_once() =>
        Assert.Equal(40, Metered(Read(Site, -4, 0), Read(FirstBox, -4, 0), Read(Site, -1, 40), Read(FirstBox, -1, 30)));

    [Fact]
    public void The_season_is_metered_too_and_both_say_between_which_readings()
    {
        var water = Water([Read(Site, -9, 50), Read(Site, -4, 100), Read(Site, -1, 800)]);
        Assert.Equal(new MeteredWater(SmallCourse.Monday.AddDays(-4), SmallCourse.Monday.AddDays(-1), 700), water.MeteredMonth);
        Assert.Equal(SmallCourse.Monday.AddDays(-1), water.MeteredSeason!.To);
        Assert.True(water.MeteredSeason.Litres >= 700);
        Assert.Null(Water([]).MeteredSeason);
    }

    /// <summary>An hour of 100 L/min a night since 28 April, against 5,000 L a day: three nights of April and three of May.</summary>
    [Fact]
    public void A_permit_is_held_against_the_season_and_not_only_against_the_month()
    {
        var course = SmallCourse.OneStation(20);
        var water = (course with
        {
            Stations = [course.Stations[0] with { FlowLPerMin = 100 }],
            Weather = [.. Enumerable.Range(-6, 6).Select(day => OneZone.Day(SmallCourse.Monday.AddDays(day).DayNumber - OneZone.First.DayNumber, 5))],
            Described = site => site with { Start = SmallCourse.Monday.AddDays(-6), WaterLimits = new() { DayL = 5000 } },
        }).Sheet().Water;
        Assert.Equal(SmallCourse.Monday.AddDays(-6), water.SeasonFrom);
        Assert.Equal((6000d, 6), (Math.Round(water.Limits.Single().Used, 6), water.Limits.Single().Over));
    }

    /// <summary>365,000 L from 1 January to 31 December: 1,000 a day, 31 days of May.</summary>
    [Fact]
    public void A_months_share_of_the_allotment_goes_by_its_days()
    {
        var course = SmallCourse.OneStation(20) with { Described = site => site with { WaterLimits = new() { AllotmentL = 365_000 } } };
        Assert.Equal(31_000, course.Sheet().Water.AllotmentMonthL!.Value, 1e-6);
        Assert.Equal(28_000, (course with { Date = new(2027, 2, 3) }).Sheet().Water.AllotmentMonthL!.Value, 1e-6);
    }

    private static double? Metered(params LogEntry[] log) => Water(log).MeteredMonth?.Litres;

    private static WaterUsed Water(LogEntry[] log) => (SmallCourse.OneStation(20) with { Log = log }).Sheet().Water;

    private static LogEntry Read(Place where, int days, double litres) => new()
    {
        Time = new(SmallCourse.Monday.AddDays(days), new(7, 0)),
        Kind = LogKind.Meter,
        Where = where,
        Value = litres,
        Unit = LogUnit.Litres,
    };
}
