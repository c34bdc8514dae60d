using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Advice;
using Xunit;

namespace DailyAdjust.Tests.Morning;

/// <summary>
/// Three boxes, each with one station that is due from 01:00 to 02:00 and asks 100 L/min; 10 mm an hour, allowable depletion 50 mm, 5 mm a
/// day: 48 mm down at midnight, a station that does not run is 53 mm down at its next start.
/// </summary>
public class RunByHandTests
{
    private static readonly DateOnly Today = SmallCourse.Monday;
    private static readonly Place Pump = new(PlaceKind.Pump, "", "");
    private static readonly LogEntry Failed = Entry(LogKind.Ran, Pump, "00:30", 0) with { Unit = LogUnit.Percent, Until = new LogTime(Today, new(3, 40)) };

    [Fact]
    public void Boxes_that_the_pump_carries_together_run_together_and_each_program_as_a_whole()
    {
        var list = Course(pump: 250)!;
        Assert.Equal(["05:00-06:00 C1 C2 200", "06:00-07:00 C3 100"], Groups(list));
        Assert.All(list.Groups.SelectMany(g => g.Boxes), box => Assert.Equal(("P1", 100d, 60d), (box.Program, box.Percent, box.Stations.Single().Minutes)));
        Assert.Null(list.FirstPlay);
    }

    [Fact]
    public void Without_a_limit_all_run_at_once()
    {
        Assert.Equal(["05:00-06:00 C1 C2 C3 300"], Groups(Course(pump: null)!));
        Assert.Equal(["05:00-06:00 C1 C2 C3 300"], Groups(Course(pump: 300)!)); // to the last litre
        Assert.Equal(["05:00-06:00 C1 C2 200", "06:00-07:00 C3 100"], Groups(Course(pump: 299)!));
    }

    [Fact]
    public void A_reduced_pump_counts_while_it_holds()
    {
        var reduced = Entry(LogKind.Pump, Pump, "04:00", 150) with { Unit = LogUnit.LitresPerMin, Until = new LogTime(Today, new(6, 0)) };
        Assert.Equal(["05:00-06:00 C1 100", "06:00-07:00 C2 C3 200"], Groups(Course(pump: 250, log: [Failed, reduced])!));

        // 80 L/min carries no station.
        var list = Course(pump: 250, log: [Failed, reduced with { Value = 80 }])!;
        Assert.Empty(list.Groups);
        Assert.Equal(3, list.BeyondPump.Count);
    }

    [Fact]
    public void What_does_not_fit_before_play_is_named()
    {
        var list = Course(pump: 250, firstPlay: new(6, 30))!;
        Assert.Equal(["05:00-06:00 C1 C2 200"], Groups(list));
        Assert.Equal("C3", Assert.Single(list.NotBeforePlay).Controller);
        Assert.Empty(Course(pump: 250, firstPlay: new(7, 0))!.NotBeforePlay);

        // After play has begun nothing fits any more.
        var late = Course(pump: 250, firstPlay: new(4, 30))!;
        Assert.Empty(late.Groups);
        Assert.Equal(3, late.NotBeforePlay.Count);
    }

    [Fact]
    public void The_most_important_ground_comes_first()
    {
        var list = Course(pump: 100, priority: ["third", "first", "second"])!;
        Assert.Equal(["05:00-06:00 C3 100", "06:00-07:00 C1 100", "07:00-08:00 C2 100"], Groups(list));
    }

    [Fact]
    public void A_flow_that_nobody_knows_runs_alone_where_the_pump_has_a_limit()
    {
        Assert.Equal(["05:00-06:00 C1 C3 200", "06:00-07:00 C2 0"], Groups(Course(pump: 1000, unknownFlow: "C2")!));
        Assert.Equal(["05:00-06:00 C1 C2 C3 200"], Groups(Course(pump: null, unknownFlow: "C2")!));
    }

    [Theory]
    [InlineData(45, 0)] // 50 mm down at the next start: just within
    [InlineData(45.1, 3)]
    public void What_can_wait_is_not_watered(double depletionMm, int stations)
    {
        var list = Course(pump: null, depletionMm: depletionMm)!;
        Assert.Equal(stations, list.Groups.Sum(g => g.Boxes.Count));
        Assert.Equal(3 - stations, list.CanWait.Count);
    }

    [Fact]
    public void It_shrinks_by_what_was_run_and_ends_when_all_is_made_up()
    {
        var run = Entry(LogKind.Run, new(PlaceKind.Station, "C1", "1"), "04:00", 25) with { Unit = LogUnit.Minutes };
        var list = Course(pump: null, log: [Failed, run])!;
        var box = list.Groups.SelectMany(g => g.Boxes).Single(b => b.Controller is "C1");
        Assert.Equal((60d, 25d, 35d), (box.Stations[0].MissedMinutes, box.Stations[0].RunMinutes, box.Stations[0].Minutes));
        Assert.Null(box.Program);

        var rest = run with { Value = 35, Time = new(Today, new(4, 30)) };
        var others = new[] { "C2", "C3" }.Select(c => Entry(LogKind.Run, new(PlaceKind.Program, c, "P1"), "04:00", 100) with { Unit = LogUnit.Percent });
        Assert.Null(Course(pump: null, log: [Failed, run, rest, .. others]));
    }

    [Fact]
    public void Ground_with_less_room_than_was_missed_takes_only_what_it_has_room_for()
    {
        // 48 mm down; 40 mm of rain since midnight leave 8 mm: but then it can wait. Hosed ground is no different.
        var hose = Entry(LogKind.Hose, new(PlaceKind.Station, "C1", "1"), "04:00", 40) with { Unit = LogUnit.Mm };
        Assert.Contains(new StationKey("C1", "1"), Course(pump: null, log: [Failed, hose])!.CanWait);
    }

    [Fact]
    public void Ground_without_room_for_a_run_worth_its_while_can_wait_and_is_named()
    {
        // 0.3 mm above what is left empty for rain: less than 2 minutes. After a run by hand there is nothing more to say.
        var list = Course(pump: null, leaveEmpty: 0.954)!;
        Assert.Empty(list.Groups);
        Assert.Equal(["C1", "C2", "C3"], list.CanWait.Select(s => s.Controller));
        var run = Entry(LogKind.Run, new(PlaceKind.Station, "C1", "1"), "04:00", 5) with { Unit = LogUnit.Minutes };
        Assert.Equal(["C2", "C3"], Course(pump: null, log: [Failed, run], leaveEmpty: 0.954)!.CanWait.Select(s => s.Controller));
    }

    [Fact]
    public void What_must_not_run_is_left_alone_and_named()
    {
        var hold = Entry(LogKind.Hold, new(PlaceKind.Controller, "C2", ""), "04:00", null) with { Until = new LogTime(Today, new(12, 0)) };
        var list = Course(pump: null, log: [Failed, hold])!;
        Assert.Equal([new StationKey("C2", "1")], list.MustNotRun);
        Assert.DoesNotContain(list.Groups.SelectMany(g => g.Boxes), b => b.Controller is "C2");
    }

    [Fact]
    public void One_that_can_wait_or_must_not_run_does_not_make_the_other_vanish()
    {
        // C3 is made up for. C2 can wait, for it was hosed; or must not run.
        var done = Entry(LogKind.Run, new(PlaceKind.Program, "C3", "P1"), "04:00", 100) with { Unit = LogUnit.Percent };
        var hose = Entry(LogKind.Hose, new(PlaceKind.Station, "C2", "1"), "04:00", 40) with { Unit = LogUnit.Mm };
        var hold = Entry(LogKind.Hold, new(PlaceKind.Controller, "C2", ""), "04:00", null) with { Until = new LogTime(Today, new(12, 0)) };
        StationKey second = new("C2", "1");
        var waits = Course(pump: null, log: [Failed, done, hose])!;
        Assert.Equal(["05:00-06:00 C1 100"], Groups(waits));
        Assert.Equal([second], waits.CanWait);
        var held = Course(pump: null, log: [Failed, done, hold])!;
        Assert.Equal(["05:00-06:00 C1 100"], Groups(held));
        Assert.Equal([second], held.MustNotRun);
    }

    [Fact]
    public void Nothing_runs_into_hours_in_which_the_place_forbids_it()
    {
        // Two of three at a time; from 06:00 on nothing may run any more.
        var rule = new Restriction { Name = "day hours", HoursNotAllowed = new WateringWindow(new(6, 0), new(20, 0)) };
        var list = Course(pump: 250, rules: [rule])!;
        Assert.Equal(["05:00-06:00 C1 C2 200"], Groups(list));
        Assert.Equal("C3", Assert.Single(list.NotBeforePlay).Controller);

        // A quarter of an hour less, and no station's hour ends in time.
        Assert.Empty(Course(pump: 250, rules: [rule with { HoursNotAllowed = new WateringWindow(new(5, 45), new(20, 0)) }])!.Groups);
        Assert.Equal(3, Course(pump: 250, rules: [rule with { HoursNotAllowed = new WateringWindow(new(4, 45), new(20, 0)) }])!.MustNotRun.Count);
    }

    [Fact]
    public void A_rule_over_one_area_keeps_only_that_waiting_until_it_ends_before_play()
    {
        var rule = new Restriction { Name = "quiet hour", Areas = ["second"], HoursNotAllowed = new WateringWindow(new(6, 0), new(6, 30)) };
        var list = Course(pump: 100, rules: [rule], firstPlay: new(9, 0))!;
        Assert.Equal(["05:00-06:00 C1 100", "06:00-07:00 C3 100", "07:00-08:00 C2 100"], Groups(list));

        // C3 must wait, and nothing else is left to do meanwhile.
        Assert.Equal(["05:00-06:00 C1 C2 200", "06:30-07:30 C3 100"], Groups(Course(pump: 250, rules: [rule with { Areas = ["third"] }], firstPlay: new(9, 0))!));
    }

    [Fact]
    public void An_order_that_begins_meanwhile_ends_the_running()
    {
        var hold = Entry(LogKind.Hold, new(PlaceKind.Controller, "C3", ""), "06:30", null) with { Until = new LogTime(Today, new(12, 0)) };
        var list = Course(pump: 250, log: [Failed, hold])!;
        Assert.Equal(["05:00-06:00 C1 C2 200"], Groups(list));
        Assert.Equal("C3", Assert.Single(list.NotBeforePlay).Controller);
        Assert.Equal(["05:00-06:00 C1 C2 200", "06:00-07:00 C3 100"], Groups(Course(pump: 250, log: [Failed, hold with { Time = new(Today, new(7, 0)) }])!));
    }

    [Fact]
    public void What_is_to_be_run_by_hand_is_not_sent_to_the_hose_without_a_word()
    {
        var sheet = Described(pump: null, log: [Failed], depletionMm: 49).Sheet();
        Assert.Equal(3, sheet.RunByHand!.Groups.Sum(g => g.Boxes.Count));
        Assert.All(sheet.Driest, d => Assert.Contains("run by hand first", d.BeforeHose.ToString(), StringComparison.Ordinal));
        Assert.NotEmpty(sheet.Driest);
    }

    [Fact]
    public void Less_than_the_shortest_run_is_nobodys_walk() =>
        Assert.Null(Course(pump: null, log: [Failed with { Time = new(Today, new(1, 0)), Until = new LogTime(Today, new(1, 2)) }]));

    [Fact]
    public void A_whole_start_that_did_not_run_is_missed_too() =>
        Assert.Equal(["05:00-06:00 C1 100"], Groups(Course(pump: null, log: [Entry(LogKind.Ran, new(PlaceKind.Program, "C1", "P1"), "04:30", 0) with { Unit = LogUnit.Percent }])!));

    [Theory]
    [InlineData(43, 8, false)] // 51 mm down at 12:05; by the share of an ordinary noon it would be 48
    [InlineData(47.9, 2, true)] // 49.9; by the share of an ordinary noon it would be 50.2
    public void On_a_later_look_what_was_measured_of_the_day_is_drawn_when_it_was(double depletionMm, double etoSoFarMm, bool canWait)
    {
        // Noon by the sun, 5 mm expected of the whole day: 2.5 are still to come. C3 starts again at 12:05; allowable depletion is 50 mm.
        var noon = new TimeOnly(11, 57);
        var look = Described(pump: null, log: [Failed], depletionMm: depletionMm, alsoAt: "12:05") with
        {
            At = noon,
            EtoSoFar = new(etoSoFarMm, new(Today.ToDateTime(noon), TimeSpan.Zero), "yard", IsSupplied: false),
        };
        var list = look.Sheet().RunByHand!;
        Assert.Equal(canWait, list.CanWait.Contains(new StationKey("C3", "1")));
    }

    [Fact]
    public void A_night_that_ran_leaves_nothing() => Assert.Null(Course(pump: 250, log: []));

    [Fact]
    public void What_runs_by_itself_has_its_share_of_the_pump_and_its_box()
    {
        // C3 also starts at 05:00 today, on a program of its own with the same station: an hour at 100 L/min.
        var list = Course(pump: 200, alsoAt: "05:00")!;
        Assert.Equal(["05:00-06:00 C1 100", "06:00-07:00 C2 100"], Groups(list).Take(2));
        Assert.DoesNotContain(list.Groups[0].Boxes, b => b.Controller is "C3");

        // What begins when the hour of hand runs is over is in nobody's way.
        Assert.Equal(["05:00-06:00 C1 C2 C3 300"], Groups(Course(pump: null, depletionMm: 51, alsoAt: "06:00")!));
    }

    [Fact]
    public void A_grow_in_runs_by_itself_at_its_own_starts_for_its_own_minutes()
    {
        // Half an hour at 07:00 on C3, of a program whose hour begins at 23:00.
        var growIn = Entry(LogKind.GrowIn, new(PlaceKind.Program, "C3", "P2"), "04:00", 30) with { Time = new(Today.AddDays(-1), new(4, 0)), Times = 6, Unit = LogUnit.Minutes, Until = new LogTime(Today.AddDays(3), null) };
        Assert.Equal(["05:00-06:00 C1 100", "06:00-07:00 C2 100", "07:00-08:00 C3 100"], Groups(Course(pump: 100, depletionMm: 51, alsoAt: "23:00")!));
        Assert.Equal(["05:00-06:00 C1 100", "06:00-07:00 C2 100", "07:30-08:30 C3 100"], Groups(Course(pump: 100, log: [growIn, Failed], depletionMm: 51, alsoAt: "23:00")!));
    }

    private static IReadOnlyList<string> Groups(RunByHand list) =>
        [.. list.Groups.Select(g => FormattableString.Invariant($"{g.From:HH:mm}-{g.To:HH:mm} {string.Join(' ', g.Boxes.Select(b => b.Controller))} {g.FlowLPerMin}"))];

    private static LogEntry Entry(LogKind kind, Place where, string time, double? value) =>
        new() { Time = new(Today, TimeOnly.ParseExact(time, "HH:mm", null)), Kind = kind, Where = where, Value = value };

    private static RunByHand? Course(
        double? pump,
        IReadOnlyList<LogEntry>? log = null,
        double depletionMm = 48,
        TimeOnly? firstPlay = null,
        IReadOnlyList<string>? priority = null,
        string? unknownFlow = null,
        string? alsoAt = null,
        IReadOnlyList<Restriction>? rules = null,
        double leaveEmpty = 0) => Described(pump, log, depletionMm, firstPlay, priority, unknownFlow, alsoAt, rules, leaveEmpty).Sheet().RunByHand;

    private static SmallCourse Described(
        double? pump,
        IReadOnlyList<LogEntry>? log,
        double depletionMm,
        TimeOnly? firstPlay = null,
        IReadOnlyList<string>? priority = null,
        string? unknownFlow = null,
        string? alsoAt = null,
        IReadOnlyList<Restriction>? rules = null,
        double leaveEmpty = 0)
    {
        string[] areas = ["first", "second", "third"];
        Station Of(int n) => SmallCourse.Station(1, area: SmallCourse.Area with { Name = areas[n - 1], LeaveEmpty = leaveEmpty }) with { Key = new($"C{n}", "1"), FlowLPerMin = string.Equals(unknownFlow, $"C{n}", StringComparison.Ordinal) ? null : 100 };
        List<Controller> boxes = [.. Enumerable.Range(1, 3).Select(n => SmallCourse.Box with { Id = $"C{n}", Route = n, Programs = [SmallCourse.EveryNight("P1", "01:00")] })];
        List<Station> stations = [Of(1), Of(2), Of(3)];
        if (alsoAt is not null)
        {
            boxes[2] = boxes[2] with { Programs = [.. boxes[2].Programs, SmallCourse.EveryNight("P2", alsoAt)] };
            stations[2] = stations[2] with { BaseMinutes = new Dictionary<string, double>(StringComparer.Ordinal) { ["P1"] = 60, ["P2"] = 60 } };
        }

        return new SmallCourse
        {
            Stations = stations,
            DepletionMm = [depletionMm, depletionMm, depletionMm],
            Pump = pump,
            Priority = priority ?? [],
            Report = new ReportPolicy { FirstPlay = firstPlay },
            Log = log ?? [Failed],
            Restrictions = rules ?? [],
            Described = site => site with { Controllers = boxes },
        };
    }
}
