using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>A start that is allowed and whose run is still on when water is not. An hour a station from 22:00, two stations.</summary>
public class ReachingRunsTests
{
    private static readonly DateTimeOffset Evening = new(SmallCourse.Monday.ToDateTime(new(22, 0)), TimeSpan.Zero);
    private static readonly Area Bank = SmallCourse.Area with { Name = "bank" };

    [Theory]
    [InlineData(18, true)] // from 00:00 on: it ends then
    [InlineData(19, false)]
    public void An_event_that_begins_while_a_run_is_on(double hours, bool ends)
    {
        var reaching = Course(Event(hours)).Sheet().Fit.Reaching;
        if (ends)
        {
            Assert.Empty(reaching);
            return;
        }

        var run = Assert.Single(reaching);
        Assert.Equal(
            (new ProgramKey("C1", "P1"), Evening, Evening.AddHours(1), Evening.AddHours(2), TimeSpan.FromHours(1), "event, club championship"), (run.Program, run.Start.At, run.From, run.To, run.EarlierBy, run.Why.ToString()));
        Assert.Empty(run.Stations); // all of them must not
    }

    [Fact]
    public void A_start_in_the_order_is_taken_out_and_reaches_into_nothing() => Assert.Empty(Course(Event(20)).Sheet().Fit.Reaching);

    [Fact]
    public void Only_stations_of_the_ground_that_the_order_stops_are_named()
    {
        // The first is over at 23:00; the second, on the bank, runs until 24:00 and must not from 22:30 on.
        var order = Order(LogKind.NoWater, new(PlaceKind.Area, "bank", "")) with { Time = new(SmallCourse.Monday, new(22, 30)) };
        var run = Assert.Single(Course(order).Sheet().Fit.Reaching);
        Assert.Equal([new StationKey("C1", "2")], run.Stations);
        Assert.Equal((Evening.AddMinutes(30), Evening.AddHours(2)), (run.From, run.To));
    }

    [Fact]
    public void An_order_that_is_over_within_the_run_is_not_met_by_an_earlier_start()
    {
        var order = Order(LogKind.NoWater, new(PlaceKind.Site, "", "")) with { Time = new(SmallCourse.Monday, new(22, 30)), Until = new(SmallCourse.Monday, new(23, 15)) };
        var run = Assert.Single(Course(order).Sheet().Fit.Reaching);
        Assert.Equal((Evening.AddMinutes(30), Evening.AddMinutes(75), null), (run.From, run.To, run.EarlierBy));
    }

    [Fact]
    public void Each_order_is_told_in_the_order_of_time()
    {
        var reaching = Course(
            Order(LogKind.NoWater, new(PlaceKind.Site, "", "")) with { Time = new(SmallCourse.Monday, new(23, 30)) },
            Order(LogKind.NoWater, new(PlaceKind.Area, "bank", "")) with { Time = new(SmallCourse.Monday, new(22, 30)) }).Sheet().Fit.Reaching;
        Assert.Equal([Evening.AddMinutes(30), Evening.AddMinutes(90)], reaching.Select(r => r.From));
    }

    [Fact]
    public void An_order_that_is_over_before_its_stations_run_stops_none()
    {
        var order = Order(LogKind.NoWater, new(PlaceKind.Area, "bank", "")) with { Time = new(SmallCourse.Monday, new(22, 30)), Until = new(SmallCourse.Monday, new(23, 0)) };
        Assert.Empty(Course(order).Sheet().Fit.Reaching);
    }

    [Theory]
    [InlineData("23:59", 1)]
    [InlineData("00:00", 0)]
    public void Hours_of_a_watering_rule_begin_while_a_run_is_on(string from, int found)
    {
        var rule = new Restriction { Name = "nights", HoursNotAllowed = new(TimeOnly.ParseExact(from, "HH:mm", null), new(6, 0)) };
        var reaching = (Course() with { Restrictions = [rule] }).Sheet().Fit.Reaching;
        Assert.Equal(found, reaching.Count);
        Assert.All(reaching, r => Assert.Equal("watering rule: nights", r.Why.ToString()));
    }

    [Fact]
    public void A_rule_that_is_over_forbids_nothing()
    {
        var rule = new Restriction { Name = "nights", Until = SmallCourse.Monday.AddDays(-1), HoursNotAllowed = new(new(23, 0), new(6, 0)) };
        Assert.Empty((Course() with { Restrictions = [rule] }).Sheet().Fit.Reaching);
    }

    [Fact]
    public void Stations_that_an_order_takes_out_of_a_start_keep_no_later_one_waiting()
    {
        // The first must not run from 21:00 on and is taken out: the second, from 22:00 to 23:00, is over when the event begins.
        var order = Order(LogKind.Hold, new(PlaceKind.Station, "C1", "1")) with { Time = new(SmallCourse.Monday, new(21, 0)) };
        var sheet = Course(order, Event(19)).Sheet();
        Assert.Equal([new StationKey("C1", "1")], Assert.Single(sheet.Programs[0].StationsOut).Stations);
        Assert.Empty(sheet.Fit.Reaching);
        Assert.Equal(Evening.AddHours(1), sheet.Programs[0].Finishes);
        Assert.Equal(Evening.AddHours(1), sheet.Fit.Runs[0].Finishes);
    }

    [Fact]
    public void An_earlier_start_is_told_only_where_it_fits_beside_the_others()
    {
        var course = Course(Event(19)) with
        {
            Stations = [SmallCourse.Station(1), SmallCourse.Station(2, area: Bank), SmallCourse.Station(3, minutes: 30, programs: "P2")],
            DepletionMm = [5, 5, 5],
        };
        SmallCourse With(string start) => course with { Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", start)] } };
        Assert.Equal(TimeSpan.FromHours(1), Assert.Single(With("20:00").Sheet().Fit.Reaching).EarlierBy);
        Assert.Null(Assert.Single(With("21:15").Sheet().Fit.Reaching).EarlierBy);
    }

    private static LogEntry Event(double hours) => Order(LogKind.Event, new(PlaceKind.Site, "", "")) with
    {
        Until = new(SmallCourse.Monday.AddDays(1), new(18, 0)),
        Value = hours * 60,
        Unit = LogUnit.Minutes,
        Note = "club championship",
    };

    private static LogEntry Order(LogKind kind, Place where) => new()
    {
        Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)),
        Kind = kind,
        Where = where,
        Until = new(SmallCourse.Monday.AddDays(2), null),
    };

    private static SmallCourse Course(params LogEntry[] log) => new()
    {
        Stations = [SmallCourse.Station(1), SmallCourse.Station(2, area: Bank)],
        DepletionMm = [5, 5],
        Log = log,
    };
}
