using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>Whether the programs fit the night. Dry ground, so that every program stays at its setting or above; one hour at 100 %.</summary>
public class NightFitTests
{
    private static readonly DateTimeOffset Evening = new(SmallCourse.Monday.ToDateTime(new(22, 0)), TimeSpan.Zero);

    [Fact]
    public void Stations_run_one_after_another_with_the_gap_between()
    {
        var course = Held(2) with { Controller = SmallCourse.Box with { StationGap = TimeSpan.FromMinutes(2) } };
        Assert.Equal(Evening.AddMinutes(122), course.Advice().Finishes);
    }

    [Theory]
    [InlineData(ProgramOverlap.Together, 0)]
    [InlineData(ProgramOverlap.Stack, 30)] // begins when the first has ended
    public void Two_programs_of_one_controller_overlap(ProgramOverlap overlap, double pushedBackMinutes)
    {
        // 22:00 to 23:00, and 22:30 to 23:30: half an hour. At 50 % the first ends in time.
        var course = TwoPrograms("22:30", overlap);
        var sheet = course.Sheet();
        var found = Assert.Single(sheet.Fit.Overlaps);
        Assert.Equal(("P1", "P2", 30d, 50d), (found.First, found.Second, found.Minutes, found.LargestPercent));
        Assert.Equal(Evening.AddMinutes(90 + pushedBackMinutes), sheet.Programs[1].Finishes);
    }

    [Fact]
    public void One_after_the_other_they_do_not() => Assert.Empty(TwoPrograms("23:00", ProgramOverlap.Together).Sheet().Fit.Overlaps);

    [Theory]
    [InlineData("20:00", "23:00", 0)]
    [InlineData("22:01", "06:00", 1)] // begins too early
    [InlineData("20:00", "22:10", 1)] // ends too late, and a quarter of an hour would be a skip
    public void Runs_outside_the_window_are_named(string opens, string closes, int found)
    {
        var course = Held(1) with { Window = new(TimeOnly.ParseExact(opens, "HH:mm", null), TimeOnly.ParseExact(closes, "HH:mm", null)) };
        Assert.Equal(found, course.Sheet().Fit.Window.Count);
    }

    [Fact]
    public void The_pump_is_asked_for_what_runs_at_once()
    {
        // 100 L/min a station: 200 between 22:10 and 23:00, of 150. Neither can be so short that they miss one another.
        var found = Assert.Single((TwoPrograms("22:10", ProgramOverlap.Together) with { Pump = 150 }).Sheet().Fit.Pump);
        Assert.Equal((Evening.AddMinutes(10), Evening.AddMinutes(60), 200d, 150d), (found.From, found.To, found.FlowLPerMin, found.CapacityLPerMin));
    }

    [Theory]
    [InlineData("22:00", "21:00")] // an hour each
    [InlineData("22:10", "23:10")] // in quarters of an hour; an hour later is nearer than an hour and a quarter earlier
    [InlineData("18:00", null)] // not at once
    public void Where_no_number_helps_a_start_is_proposed_that_fits(string secondStart, string? proposed)
    {
        var course = TwoPrograms(secondStart, ProgramOverlap.Together) with { Pump = 150 };
        var fit = course.Sheet().Fit;
        Assert.Equal(proposed is null ? [] : [new StartMove(new("C1", "P2"), Time(secondStart), Time(proposed))], fit.Moves);
        if (proposed is not null)
        {
            var moved = TwoPrograms(proposed, ProgramOverlap.Together) with { Pump = 150 };
            Assert.Equal((0, 0), (moved.Sheet().Fit.Pump.Count, moved.Sheet().Fit.Overlaps.Count));
        }
    }

    [Fact]
    public void Starts_that_are_proposed_fit_together()
    {
        // Three boxes' worth on one pump that carries one at a time, all at 22:00.
        var course = new SmallCourse
        {
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "22:00"), SmallCourse.EveryNight("P3", "22:00")] },
            Stations = [.. Enumerable.Range(1, 3).Select(i => SmallCourse.Station(i, programs: "P" + i) with { FlowLPerMin = 100 })],
            DepletionMm = [5, 5, 5],
            Pump = 150,
        };
        var moves = course.Sheet().Fit.Moves;
        Assert.Equal(2, moves.Count);
        Assert.Empty((course with
        {
            Controller = SmallCourse.Box with
            {
                Programs = [.. course.Controller.Programs.Select(p => moves.FirstOrDefault(m => string.Equals(m.Program.Program, p.Id, StringComparison.Ordinal)) is { } move ? p with { Starts = [move.To] } : p)],
            },
        }).Sheet().Fit.Pump);
    }

    [Fact]
    public void A_start_is_not_proposed_into_hours_that_a_watering_rule_forbids_or_outside_the_window()
    {
        var course = TwoPrograms("22:00", ProgramOverlap.Together) with { Pump = 150 };
        Assert.Equal(Time("23:00"), Assert.Single((course with { Restrictions = [new() { Name = "evenings", HoursNotAllowed = new(Time("17:00"), Time("21:30")) }] }).Sheet().Fit.Moves).To);
        Assert.Equal(Time("23:00"), Assert.Single((course with { Window = new(Time("22:00"), Time("06:00")) }).Sheet().Fit.Moves).To);
        Assert.Empty((course with { Window = new(Time("22:00"), Time("23:10")) }).Sheet().Fit.Moves);
    }

    [Fact]
    public void A_start_is_not_proposed_into_hours_that_a_known_rule_forbids_from_the_next_day_on()
    {
        // Tonight 21:00 is open to it.
        var course = TwoPrograms("22:00", ProgramOverlap.Together) with { Pump = 150 };
        Restriction Evenings(int days) => new() { Name = "evenings", From = SmallCourse.Monday.AddDays(days), HoursNotAllowed = new(Time("17:00"), Time("21:30")) };
        Assert.Equal(Time("23:00"), Assert.Single((course with { Restrictions = [Evenings(1)] }).Sheet().Fit.Moves).To);
        Assert.Equal(Time("21:00"), Assert.Single((course with { Restrictions = [Evenings(30)] }).Sheet().Fit.Moves).To);
    }

    [Fact]
    public void What_no_start_mends_is_named()
    {
        // Two hours of water on a pump that carries one box, and a window of an hour and ten minutes.
        var none = (TwoPrograms("22:00", ProgramOverlap.Together) with { Pump = 150, Window = new(Time("22:00"), Time("23:10")) }).Sheet().Fit;
        Assert.Equal([new ProgramKey("C1", "P1"), new("C1", "P2")], none.NoStartFits);
        Assert.Empty(none.NotLookedFor);
        Assert.Empty((TwoPrograms("22:00", ProgramOverlap.Together) with { Pump = 150 }).Sheet().Fit.NoStartFits);
    }

    [Fact]
    public void Other_starts_are_looked_for_a_few_programs_at_a_time_and_the_rest_is_named()
    {
        // Fifteen programs at 22:00, one at a time is carried: 20:00, 21:00, 23:00 and midnight are left; they run every day.
        var ids = Enumerable.Range(1, 15).Select(i => "P" + i).ToList();
        var course = new SmallCourse
        {
            Controller = SmallCourse.Box with { Programs = [.. ids.Select(id => SmallCourse.EveryNight(id, "22:00"))] },
            Stations = [.. ids.Select((id, i) => SmallCourse.Station(i + 1, programs: id) with { FlowLPerMin = 100 })],
            DepletionMm = [.. ids.Select(_ => 5d)],
            Pump = 150,
            Window = new(Time("20:00"), Time("01:00")),
        };
        var fit = course.Sheet().Fit;
        Assert.Equal((4, 8, 3), (fit.Moves.Count, fit.NoStartFits.Count, fit.NotLookedFor.Count));
        Assert.Equal(15, fit.Moves.Select(m => m.Program).Concat(fit.NoStartFits).Concat(fit.NotLookedFor).Distinct().Count());
    }

    [Fact]
    public void A_start_is_not_proposed_into_an_order_nor_so_that_its_run_reaches_into_one()
    {
        // Off from 18:00 to 21:30, so 21:00 is out, and from 23:30 on, so 23:00 to 24:00 is.
        var course = TwoPrograms("22:00", ProgramOverlap.Together) with { Pump = 150 };
        LogEntry evening = new()
        {
            Time = new(SmallCourse.Monday, new(18, 0)),
            Kind = LogKind.NoWater,
            Where = new(PlaceKind.Site, "", ""),
            Until = new(SmallCourse.Monday, new(21, 30)),
        };
        Assert.Equal(Time("23:00"), Assert.Single((course with { Log = [evening] }).Sheet().Fit.Moves).To);
        Assert.Equal(Time("17:00"), Assert.Single((course with { Log = [evening, evening with { Time = new(SmallCourse.Monday, new(23, 30)), Until = new(SmallCourse.Monday.AddDays(1), null) }] }).Sheet().Fit.Moves).To);
    }

    [Fact]
    public void Hours_of_a_rule_are_hours_of_the_sites_clock()
    {
        // A box on standard time in summer: its 21:00 are 22:00 on the course's clock, the hour that the rule begins; its 22:00 is still forbidden. An hour after 21:00 lies before.
        var course = TwoPrograms("21:00", ProgramOverlap.Together) with { Pump = 150, Zone = TimeZoneInfo.FindSystemTimeZoneById("America/Chicago"), Restrictions = [new() { Name = "late", HoursNotAllowed = new(Time("23:00"), Time("06:00")) }] };
        course = course with
        {
            Controller = course.Controller with
            {
                ClockStaysStandard = true,
                Programs = [SmallCourse.EveryNight("P1", "21:00"), SmallCourse.EveryNight("P2", "21:00")],
            },
        };
        Assert.Equal(Time("20:00"), Assert.Single(course.Sheet().Fit.Moves).To);
    }

    [Fact]
    public void A_box_that_stacks_is_moved_as_a_whole_and_no_more_than_is_needed()
    {
        // P1 and P2 wait for one another: 22:00 to 24:00; another box at 22:00, and the pump carries one. One move mends it.
        var box = SmallCourse.Box with { Overlap = ProgramOverlap.Stack, Route = 1, Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "22:00")] };
        var other = SmallCourse.Box with { Id = "C2", Route = 2, Programs = [SmallCourse.EveryNight("P1", "22:00")] };
        var course = new SmallCourse
        {
            Controller = box,
            Stations =
            [
                SmallCourse.Station(1, programs: "P1") with { FlowLPerMin = 100 },
                SmallCourse.Station(2, programs: "P2") with { FlowLPerMin = 100 },
                SmallCourse.Station(1, programs: "P1") with { Key = new("C2", "1"), FlowLPerMin = 100 },
            ],
            DepletionMm = [5, 5, 5],
            Pump = 150,
            Described = site => site with { Controllers = [box, other] },
        };
        var move = Assert.Single(course.Sheet().Fit.Moves);
        Assert.Equal(new StartMove(new("C2", "P1"), Time("22:00"), Time("21:00")), move);
    }

    [Fact]
    public void A_run_that_begins_outside_the_window_is_told_a_start_inside()
    {
        var move = Assert.Single((Held(1) with { Window = new(Time("23:10"), Time("06:00")) }).Sheet().Fit.Moves);
        Assert.Equal((Time("22:00"), Time("23:15")), (move.From, move.To));
    }

    [Theory]
    [InlineData(true, "00:30")]
    [InlineData(false, null)] // on its own date the window is open from 00:30 to 05:00, and that is over
    public void Only_a_program_that_runs_every_day_may_move_past_midnight(bool daily, string? proposed)
    {
        var course = Held(1) with { Window = new(Time("00:30"), Time("05:00")) };
        var fit = (daily ? course : course with { Controller = OnMondays(course.Controller, "P1") }).Sheet().Fit;
        Assert.Equal(proposed is null ? [] : [Time(proposed)], fit.Moves.Select(m => m.To));
        ProgramKey[] kept = daily ? [] : [new("C1", "P1")];
        Assert.Equal(kept, fit.NoStartFits);
        Assert.Equal(kept, fit.KeptOnDate);
    }

    [Fact]
    public void A_start_before_the_round_is_no_way_out_for_a_date_that_is_here()
    {
        // On Monday both want 22:00, the window leaves no room for both, and before 13:00 nothing of tonight would be looked at.
        var course = TwoPrograms("22:00", ProgramOverlap.Together) with { Pump = 150, Window = new(Time("21:30"), Time("23:30")) };
        course = course with { Controller = OnMondays(course.Controller, "P2") };
        var fit = course.Sheet().Fit;
        Assert.Empty(fit.Moves);
        Assert.Equal([new ProgramKey("C1", "P1"), new("C1", "P2")], fit.NoStartFits);
        Assert.Equal([new ProgramKey("C1", "P2")], fit.KeptOnDate);
    }

    [Fact]
    public void A_station_that_alone_asks_too_much_of_the_pump_is_named()
    {
        var course = Held(1) with { Pump = 80 };
        Assert.Equal([new BeyondPump(new("C1", "P1"), new("C1", "1"), 100, 80)], course.Sheet().Fit.BeyondPump);

        // Where the pump gives more again within 12 hours, another start may help.
        var until = new LogEntry
        {
            Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)),
            Kind = LogKind.Pump,
            Where = new(PlaceKind.Pump, "", ""),
            Value = 80,
            Unit = LogUnit.LitresPerMin,
            Until = new(SmallCourse.Monday, new(22, 20)),
        };
        var reduced = (Held(1) with { Pump = 150, Log = [until] }).Sheet().Fit;
        Assert.Empty(reduced.BeyondPump);
        Assert.Equal(Time("22:30"), Assert.Single(reduced.Moves).To);
    }

    [Fact]
    public void A_start_is_not_moved_to_where_a_rule_forbids_it_to_part_of_its_ground()
    {
        var greens = SmallCourse.Area with { Name = "greens" };
        var course = TwoPrograms("22:00", ProgramOverlap.Together) with { Pump = 150 };
        course = course with
        {
            Stations = [course.Stations[0], course.Stations[1], SmallCourse.Station(3, area: greens, minutes: 0.1, programs: "P2")],
            DepletionMm = [5, 5, 5],
            Restrictions = [new() { Name = "evenings", Areas = ["greens"], HoursNotAllowed = new(Time("17:00"), Time("21:30")) }],
        };
        Assert.Equal(Time("23:00"), Assert.Single(course.Sheet().Fit.Moves).To);
    }

    [Fact]
    public void Programs_that_wait_for_one_another_need_no_other_start() => Assert.Empty(TwoPrograms("22:30", ProgramOverlap.Stack).Sheet().Fit.Moves);

    [Fact]
    public void A_reduced_pump_counts_until_its_end()
    {
        // 80 L/min until 22:20, then 150 again.
        var entry = new LogEntry
        {
            Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)),
            Kind = LogKind.Pump,
            Where = new(PlaceKind.Pump, "", ""),
            Value = 80,
            Unit = LogUnit.LitresPerMin,
            Until = new(SmallCourse.Monday, new(22, 20)),
        };
        var found = Assert.Single((Held(1) with { Pump = 150, Log = [entry] }).Sheet().Fit.Pump);
        Assert.Equal((Evening, Evening.AddMinutes(20), 100d, 80d), (found.From, found.To, found.FlowLPerMin, found.CapacityLPerMin));
    }

    [Fact]
    public void The_stop_rule_is_the_least_rain_that_makes_it_a_skip()
    {
        // Off, 20 + 5 missing tonight, 10 mm an hour: with rain r the need is (25 - r) x 10 %. Up to 25 % it is left out: 22.5 mm.
        var course = SmallCourse.OneStation(20) with
        {
            Log = [new LogEntry { Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)), Kind = LogKind.Off, Where = new(PlaceKind.Program, "C1", "P1") }],
        };
        Assert.Equal(22.5, course.Advice().StopRule!.RainMm, 6);

        // Nothing up to 50 mm would do where the ground is 90 down: then there is no rule.
        Assert.Null((course with { DepletionMm = [90] }).Advice().StopRule);
    }

    [Fact]
    public void A_program_that_is_left_to_run_has_its_stop_rule_too()
    {
        // 5 + 5 missing tonight and 100 % puts back just that: with 7.5 mm of rain the need is 25 %.
        var advice = Held(1).Advice();
        Assert.Equal((AdviceKind.Leave, 7.5), (advice.Advice, Math.Round(advice.StopRule!.RainMm, 6)));
    }

    private static Controller OnMondays(Controller box, string program) => box with
    {
        Programs = [.. box.Programs.Select(p => string.Equals(p.Id, program, StringComparison.Ordinal) ? p with { Days = new WaterDays.Weekdays([DayOfWeek.Monday]) } : p)],
    };

    private static TimeOnly Time(string text) => TimeOnly.ParseExact(text, "HH:mm", null);

    /// <summary>Needs exactly what is set, so that nothing changes: 5 and 5 missing tonight.</summary>
    private static SmallCourse Held(int stations) => new()
    {
        Stations = [.. Enumerable.Range(1, stations).Select(i => SmallCourse.Station(i) with { FlowLPerMin = 100 })],
        DepletionMm = [.. Enumerable.Repeat(5.0, stations)],
    };

    private static SmallCourse TwoPrograms(string secondStart, ProgramOverlap overlap) => new()
    {
        Controller = SmallCourse.Box with { Overlap = overlap, Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", secondStart)] },
        Stations = [SmallCourse.Station(1, programs: "P1") with { FlowLPerMin = 100 }, SmallCourse.Station(2, programs: "P2") with { FlowLPerMin = 100 }],
        DepletionMm = [5, 5],
    };
}
