using System.Globalization;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>Hold, no-water and event stop the starts whose hour lies in them, and end by themselves. The start is at 22:00.</summary>
public class OrderTests
{
    private static readonly Place Program = new(PlaceKind.Program, "C1", "P1");
    private static readonly Place All = new(PlaceKind.Site, "", "");
    private static readonly DateOnly Monday = SmallCourse.Monday;

    [Theory]
    [InlineData("20:00", AdviceKind.Set)] // over before the start
    [InlineData("22:00", AdviceKind.Set)] // over as it begins
    [InlineData("22:01", AdviceKind.Off)]
    [InlineData(null, AdviceKind.Off)] // through today
    public void No_water_stops_the_starts_before_its_end(string? until, AdviceKind advice)
    {
        var entry = Order(LogKind.NoWater, new(PlaceKind.Area, "ground", ""), until: new(Monday, Clock(until))) with { Note = "foliar feeding", By = "Ines" };
        var sheet = Dry(entry).Sheet();
        Assert.Equal(advice, sheet.Programs[0].Advice);
        if (advice == AdviceKind.Off)
        {
            Assert.Equal($"Must not run: no water, foliar feeding, {(until is null ? "through" : $"until {until}")} Mon 4 May.", sheet.Programs[0].Reason.ToString());
            Assert.Equal(("area:ground", Monday, "Ines"), (sheet.StandingOrders[0].Where, sheet.StandingOrders[0].Until!.Value, sheet.StandingOrders[0].By));
        }
    }

    [Fact]
    public void The_morning_after_its_end_is_an_ordinary_one()
    {
        var entry = Order(LogKind.NoWater, All, until: new(Monday, null));
        var tuesday = (Dry(entry) with { Date = Monday.AddDays(1) }).Sheet();
        Assert.Equal(AdviceKind.Set, tuesday.Programs[0].Advice);
        Assert.Empty(tuesday.StandingOrders);
    }

    [Theory]
    [InlineData(1, "C1/2 must not run and was not asked (")]
    [InlineData(2, "C1/2 and C1/3 must not run and were not asked (")]
    public void Ground_that_must_not_run_was_not_asked_whether_the_rest_can_wait(int held, string words)
    {
        var (roomy, bank) = (SmallCourse.Area with { LeaveEmpty = 0.9 }, SmallCourse.Area with { Name = "bank" });
        var sheet = (SmallCourse.OneStation(0) with
        {
            Stations = [.. Enumerable.Range(1, 3).Select(n => SmallCourse.Station(n, area: n is 1 || n > 1 + held ? roomy : bank))],
            DepletionMm = [0, 60, held == 1 ? 0 : 60],
            Log = [Order(LogKind.Hold, new(PlaceKind.Area, "bank", ""), until: new(Monday.AddDays(9), null))],
        }).Sheet();
        Assert.Equal(AdviceKind.Skip, sheet.Programs[0].Advice);
        Assert.Contains(words, sheet.Programs[0].Reason.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(LogKind.Hold)]
    [InlineData(LogKind.NoWater)]
    public void An_order_for_later_counts_from_when_it_begins(LogKind kind)
    {
        var tuesday = Order(kind, All, until: new(Monday.AddDays(1), null)) with { Time = new(Monday.AddDays(1), null) };
        var monday = Dry(tuesday).Sheet();
        Assert.Equal(AdviceKind.Set, monday.Programs[0].Advice);
        Assert.Equal(new DateTimeOffset(2026, 5, 5, 0, 0, 0, TimeSpan.Zero), monday.StandingOrders[0].Begins); // told already
        Assert.Equal(AdviceKind.Off, (Dry(tuesday) with { Date = Monday.AddDays(1) }).Advice().Advice);
    }

    [Theory]
    [InlineData(20, AdviceKind.Off)] // from 22:00 on
    [InlineData(19.9, AdviceKind.Set)]
    public void An_event_dries_the_ground_so_long_before_its_end_whenever_it_was_entered(double hours, AdviceKind advice)
    {
        var entry = Order(LogKind.Event, All, until: new(Monday.AddDays(1), new(18, 0))) with { Value = hours * 60, Unit = LogUnit.Minutes, Note = "club championship" };
        Assert.Equal(advice, Dry(entry).Advice().Advice);
    }

    [Theory]
    [InlineData("22:00", AdviceKind.Set)]
    [InlineData("23:00", AdviceKind.Off)]
    public void In_the_night_of_25_hours_an_event_of_20_hours_is_20_hours_long(string start, AdviceKind advice)
    {
        // 18:00 CST on 1 November is 24:00 UTC; 20 hours before it stands 23:00 CDT on the clock.
        var eve = new DateOnly(2026, 10, 31);
        var entry = Order(LogKind.Event, All, until: new(eve.AddDays(1), new(18, 0))) with { Value = 20 * 60, Unit = LogUnit.Minutes, Time = new(eve.AddDays(-1), new(9, 0)) };
        var course = Dry(entry) with
        {
            Date = eve,
            Zone = TimeZoneInfo.FindSystemTimeZoneById("America/Chicago"),
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", start)] },
        };
        Assert.Equal(advice, course.Advice().Advice);
    }

    [Fact]
    public void Where_only_some_starts_are_hit_those_are_taken_out_and_the_number_is_made_for_the_others()
    {
        // 22:00 is stopped, 02:00 is not: it alone brings the 25 mm that are missing (5 of them today; this morning's start has brought 5), in starts of 5 mm at 100 %.
        var entry = Order(LogKind.NoWater, All, until: new(Monday, null));
        var course = SmallCourse.OneStation(25) with
        {
            Controller = SmallCourse.Box with { PercentMax = 600, Programs = [SmallCourse.EveryNight("P1", "02:00", "22:00")] },
            Stations = [SmallCourse.Station(1, minutes: 30, area: SmallCourse.Area with { AllowableDepletion = 0.2 })],
            Log = [entry],
        };
        var advice = course.Advice();
        Assert.Equal((AdviceKind.Set, 500d), (advice.Advice, advice.Percent!.Value));
        Assert.Equal(new DateTimeOffset(2026, 5, 4, 22, 0, 0, TimeSpan.Zero), Assert.Single(advice.TakenOut).At);
        var sheet = course.Sheet();
        var nights = sheet.Fit.Runs.Select(r => r.Begins.ToString("ddd HH:mm", CultureInfo.InvariantCulture));
        Assert.Equal(["Tue 02:00"], nights); // what is taken out runs into nothing and asks nothing of the pump
        Assert.Equal(new DateTimeOffset(2026, 5, 5, 2, 0, 0, TimeSpan.Zero), advice.NextStart);
        Assert.Contains(advice.Chain, r => r.Code is "restricted-start" && r.Words.ToString().Contains("22:00 Mon 4 May", StringComparison.Ordinal));

        var without = (course with { Log = [] }).Advice();
        Assert.Equal(250, without.ExactPercent!.Value, 3); // halves of 12.5 mm each
        Assert.Empty(without.TakenOut);
    }

    [Fact]
    public void An_order_over_a_part_of_the_ground_names_the_stations()
    {
        var green = SmallCourse.Area with { Name = "greens" };
        var course = new SmallCourse
        {
            Stations = [SmallCourse.Station(1), SmallCourse.Station(2, area: green)],
            DepletionMm = [60, 60],
            Log = [Order(LogKind.NoWater, new(PlaceKind.Area, "greens", ""), until: new(Monday, null))],
        };
        var advice = course.Advice();
        Assert.Equal(AdviceKind.Set, advice.Advice);
        Assert.Equal([new StationKey("C1", "2")], Assert.Single(advice.StationsOut).Stations);
        Assert.Empty(advice.TakenOut);
    }

    [Fact]
    public void A_season_that_closes_or_fills_stops_every_program_and_lists_each_box_until_it_is_ticked_off()
    {
        var closing = Entry(LogKind.Season, All) with { Text = SeasonState.Closing };
        var sheet = Dry(closing).Sheet();
        Assert.Equal((AdviceKind.Off, "Must not run: the system is being closed down since Sun 3 May."), (sheet.Programs[0].Advice, sheet.Programs[0].Reason.ToString()));
        Assert.Equal(new SeasonBox("C1", SeasonState.Closing, new DateTimeOffset(2026, 5, 3, 9, 0, 0, TimeSpan.Zero), null, ""), Assert.Single(sheet.Exceptions.Season));

        // Ticked off while it closed, it stays ticked off when it is drained.
        LogEntry[] ticked = [closing, Entry(LogKind.Checked, new(PlaceKind.Controller, "C1", "")) with { Time = new(Sunday, new(15, 0)), By = "Ines" }];
        var drained = Entry(LogKind.Season, All) with { Text = SeasonState.Drained, Time = new(Sunday, new(17, 0)) };
        Assert.Equal((SeasonState.Drained, Sunday, "Ines"), Ticked(Dry([.. ticked, drained]).Sheet()));

        // Filling begins a list of its own; open ends it.
        var charging = Entry(LogKind.Season, All) with { Text = SeasonState.Charging, Time = new(Sunday, new(18, 0)) };
        Assert.Equal((SeasonState.Charging, null, ""), Ticked(Dry([.. ticked, charging]).Sheet()));
        var open = Entry(LogKind.Season, All) with { Text = SeasonState.Open, Time = new(Sunday, new(19, 0)) };
        Assert.Empty(Dry([.. ticked, charging, open]).Sheet().Exceptions.Season);
        Assert.Equal(AdviceKind.Set, Dry([.. ticked, charging, open]).Advice().Advice);
    }

    [Fact]
    public void Where_a_checked_entry_lies_before_the_closing_it_ticks_nothing_off() =>
        Assert.Null(Dry(
            Entry(LogKind.Checked, All) with { Time = new(Sunday, new(8, 59)) },
            Entry(LogKind.Season, All) with { Text = SeasonState.Closing }).Sheet().Exceptions.Season[0].CheckedOn);

    private static DateOnly Sunday => Monday.AddDays(-1);

    private static (string State, DateOnly? On, string By) Ticked(MorningSheet sheet) =>
        (sheet.Exceptions.Season[0].State, sheet.Exceptions.Season[0].CheckedOn, sheet.Exceptions.Season[0].CheckedBy);

    /// <summary>Needs water tonight: see <see cref="DecisionOrderTests"/>.</summary>
    private static SmallCourse Dry(params LogEntry[] log) => SmallCourse.OneStation(60) with { Log = log };

    private static LogEntry Entry(LogKind kind, Place where) => new() { Time = new(Sunday, new(9, 0)), Kind = kind, Where = where };

    private static LogEntry Order(LogKind kind, Place where, LogTime until) => Entry(kind, where) with { Until = until };

    private static TimeOnly? Clock(string? text) => text is null ? null : TimeOnly.ParseExact(text, "HH:mm", null);
}
