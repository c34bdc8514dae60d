using System.Globalization;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Advice;
using DailyAdjust.Tests.Irrigation;
using Xunit;

namespace DailyAdjust.Tests.Morning;

/// <summary>Probes, hot spots, hand watering, minutes to change, gauges beside one another.</summary>
public class FoundInGroundTests
{
    private static readonly Area Probed = SmallCourse.Area with { Soil = SmallCourse.Area.Soil with { FieldCapacityPercent = 30 } };
    private static readonly Place Here = new(PlaceKind.Station, "C1", "1");

    [Fact]
    public void Readings_within_an_hour_are_one_event_and_stand_beside_the_balance()
    {
        // 28 and 26 % within the hour: 27 %, 3 % of 1000 mm missing. The reading at 08:00 is a walk of its own: 25 %, 50 mm.
        var day = ZoneDayOf(Reading(6, 0, 28), Reading(6, 40, 26), Reading(8, 0, 25));
        Assert.Equal([30.0, 50.0], day.Probes.Select(p => Math.Round(p.ProbedMm, 9)));
        Assert.Equal(10, day.Probes[0].ReckonedMm, 9);
        Assert.Equal(30, day.Probes[1].ReckonedMm, 9);
        Assert.Equal(40, day.ProbeMm, 9);
    }

    [Fact]
    public void The_moisture_meter_and_its_rods_stand_beside_the_reading()
    {
        // Roots to 1 m. Another meter than on the day before; its rods end above the roots.
        var before = Reading(6, 0, 28) with { Time = new(SmallCourse.Monday.AddDays(-1), new(6, 0)), Instrument = "meter 1", RodLengthM = 1 };
        var now = Reading(4, 0, 25) with { Instrument = "meter 2", RodLengthM = 0.075 };
        var probes = (Course(10) with { Weather = [OneDay(-2, 0), OneDay(-1, 0)], Log = [before, now] }).Sheet().Ground.Probes;
        Assert.Equal([("meter 2", 0.075, true), ("meter 1", 1, false)], probes.Select(p => (p.Instrument, p.RodLengthM!.Value, p.IsOtherInstrument)));
        Assert.Equal((50.0, 1.0), (Math.Round(probes[0].ProbedMm, 9), probes[0].RootDepthM)); // of this very morning: 5 % of 1000 mm

        var next = Course(10) with { Date = SmallCourse.Monday.AddDays(1), Weather = [OneDay(-2, 0), OneDay(-1, 0), OneDay(0, 0)], Log = [before, now] };
        probes = next.Sheet().Ground.Probes;
        Assert.Equal([("meter 2", 0.075, true), ("meter 1", 1, false)], probes.Select(p => (p.Instrument, p.RodLengthM!.Value, p.IsOtherInstrument)));
        var bare = next with { Log = [before with { Instrument = "", RodLengthM = null }, now with { Instrument = "", RodLengthM = null }] };
        Assert.Equal(bare.Sheet().Programs[0].ExactPercent, next.Sheet().Programs[0].ExactPercent);
        Assert.All(bare.Sheet().Ground.Probes, p => Assert.False(p.IsOtherInstrument));

        // What was not said is not another one, and 39.37 in are a metre.
        var said = next with { Log = [before with { Instrument = "", RodLengthM = 39.37 * 0.0254 }, now with { RodLengthM = null }] };
        Assert.All(said.Sheet().Ground.Probes, p => Assert.False(p.IsOtherInstrument));
        Assert.Equal([false, true], said.Sheet().Ground.Probes.Select(p => p.RodsEndAtRoots));
    }

    [Theory]
    [InlineData("meter 1", 0.075, 1)]
    [InlineData("meter 2", 0.075, 2)]
    [InlineData("meter 1", 0.2, 2)]
    public void Readings_of_two_moisture_meters_or_rods_are_not_averaged(string instrument, double rod, int walks) => Assert.Equal(
        walks,
        ZoneDayOf(Reading(6, 0, 28) with { Instrument = "meter 1", RodLengthM = 0.075 }, Reading(6, 20, 26) with { Instrument = instrument, RodLengthM = rod }).Probes.Count);

    [Theory]
    [InlineData(33, -30)] // 3 % of 1000 mm above field capacity
    [InlineData(30, 0)]
    [InlineData(8, 120)] // 220 mm missing of 100 available
    public void What_the_soil_cannot_hold_or_lose_is_told(double percent, double cutMm)
    {
        var day = ZoneDayOf(Reading(6, 0, percent));
        Assert.Equal(cutMm, day.Probes[0].CutMm, 9);
        Assert.Equal(day.ProbeCutMm, day.Probes[0].CutMm, 9);
    }

    [Fact]
    public void Water_by_hand_between_two_readings_parts_them()
    {
        var day = ZoneDayOf(Reading(6, 0, 26), Entry(LogKind.Hose, new(6, 20), 15, LogUnit.Mm), Reading(6, 40, 28));
        Assert.Equal([40.0, 20.0], day.Probes.Select(p => Math.Round(p.ProbedMm, 9)));
        Assert.Equal(25, day.Probes[1].ReckonedMm, 9);
    }

    [Fact]
    public void A_spot_sends_the_hose_until_it_was_hosed_and_changes_no_number()
    {
        var spot = Entry(LogKind.Spot, new(17, 0), 22, LogUnit.Percent) with { Time = new(SmallCourse.Monday.AddDays(-1), new(17, 0)), Note = "east edge" };
        var hosed = spot with { Kind = LogKind.Hose, Time = new(SmallCourse.Monday, new(4, 30)), Value = null, Unit = LogUnit.None, Text = LogEntry.OnSpot };
        MorningSheet plain = Course(10).Sheet(), seen = (Course(10) with { Log = [spot] }).Sheet(), done = (Course(10) with { Log = [spot, hosed] }).Sheet();
        var found = Assert.Single(seen.Ground.Spots);
        Assert.Equal((80, "east edge"), (found.MissingMm!.Value, found.Note));
        Assert.Empty(done.Ground.Spots);
        Assert.Equal(plain.Programs[0].ExactPercent, seen.Programs[0].ExactPercent);
        Assert.Equal(plain.Programs[0].ExactPercent, done.Programs[0].ExactPercent);
    }

    [Fact]
    public void An_area_watered_by_hand_has_eto_and_volume_but_no_alarm()
    {
        var hand = SmallCourse.Area with { Name = "hand", ByHand = true };
        var course = Course(10) with
        {
            Stations = [SmallCourse.Station(1), SmallCourse.Station(2, area: hand) with { BaseMinutes = new Dictionary<string, double>(StringComparer.Ordinal) }],
            DepletionMm = [10, 3],
            Weather = [OneDay(-3, 30), OneDay(-2, 0), OneDay(-1, 0)],
        };
        var sheet = course.Sheet();
        var green = Assert.Single(sheet.Ground.ByHand);
        Assert.Equal((SmallCourse.Monday.AddDays(-3), true, 10.0, 1000.0), (green.Since, green.WasFull, green.EtoMm, green.EtoL!.Value));
        Assert.Equal(15, green.MissingMm, 6); // full at noon of the first day at 00:00, then three days of 5 mm
        var dry = (course with { Weather = [], DepletionMm = [10, 80] }).Sheet();
        Assert.DoesNotContain(dry.Driest, d => d.Station == new StationKey("C1", "2"));
        Assert.All(dry.Outlook, o => Assert.Equal(1, o.Zones));
    }

    [Fact]
    public void How_sure_a_dry_zone_is_stands_beside_it()
    {
        var course = Course(60) with { Weather = [OneDay(-2, 0) with { Basis = EtoBasis.TemperatureOnly }, OneDay(-1, 0)], Log = [Reading(20, 0, 21) with { Time = new(SmallCourse.Monday.AddDays(-2), new(20, 0)) }] };
        var dry = Assert.Single(course.Sheet().Driest);
        Assert.Equal(new HowSure(SmallCourse.Monday.AddDays(-2), true, 1, true), dry.Sure);
    }

    [Fact]
    public void Before_ground_under_an_order_or_out_of_season_is_hosed_somebody_is_asked()
    {
        var hold = new LogEntry
        {
            Time = new(SmallCourse.Monday, new(4, 0)),
            Kind = LogKind.Hold,
            Where = new(PlaceKind.Station, "C1", "1"),
            Until = new LogTime(SmallCourse.Monday.AddDays(3), null),
            Note = "drain laid open",
        };
        Assert.Equal("", Assert.Single(Course(60).Sheet().Driest).BeforeHose.ToString());
        Assert.Equal("hold: drain laid open, through Thu 7 May: ask before you hose", Assert.Single((Course(60) with { Log = [hold] }).Sheet().Driest).BeforeHose.ToString());
        var closed = hold with { Kind = LogKind.Season, Where = new(PlaceKind.Site, "", ""), Text = SeasonState.Closed, Until = null };
        Assert.Equal("the season is closed: ask before you hose", Assert.Single((Course(60) with { Log = [closed] }).Sheet().Driest).BeforeHose.ToString());
    }

    [Theory]
    [InlineData(22, 8, 12, 16)] // 12 x 140 / 100 = 16.8, cut to 16
    [InlineData(22, 5, 12, null)] // too few mornings
    [InlineData(10, 8, 12, null)] // only since ten days
    public void Set_aside_for_three_weeks_means_other_minutes(int since, int mornings, double minutes, int? expected)
    {
        var sheets = Enumerable.Range(0, mornings).Select(i => new IssuedSheet(
            SmallCourse.Monday.AddDays(-since + (i * (since - 1) / (mornings - 1))), 1, default,
            [new IssuedLine(new("C1", "P1"), AdviceKind.Leave, 100, false) { SetAside = [new IssuedAside("1", 140, 100)] }])).ToList();
        var course = SmallCourse.OneStation(10, minutes: minutes) with { Sheets = sheets };
        Assert.Equal(expected, course.Sheet().Ground.Minutes.Select(m => (int?)m.To).SingleOrDefault());
    }

    [Fact]
    public void Of_a_skip_the_zone_that_cannot_wait_is_named()
    {
        var course = Course(0) with
        {
            Report = new ReportPolicy { Satisfy = 0.6 },
            Stations = [.. Enumerable.Range(1, 5).Select(i => SmallCourse.Station(i, area: SmallCourse.Area with { LeaveEmpty = 0.9 }))],
            DepletionMm = [0, 0, 0, 47, 47],
        };
        var advice = course.Advice();
        Assert.Equal(AdviceKind.Skip, advice.Advice);
        // Of the two needy fifths only the first may be set aside; the other is left to the number and stays short.
        Assert.Equal(["4"], advice.Zones.Where(z => z.SetAside).Select(z => z.Station.Station));
        Assert.Equal(["5"], advice.Zones.Where(z => z.ShortMm > 0 && !z.SetAside).Select(z => z.Station.Station));
    }

    [Theory]
    [InlineData(3, 0, true)]
    [InlineData(2, 0, false)]
    [InlineData(3, 1, false)] // the other gauge was wet too
    public void A_gauge_that_is_wet_only_while_sprinklers_run_is_doubted(int days, double other, bool doubted)
    {
        var weather = Enumerable.Range(-5, 5).Select(i => Two(i, -i <= days ? 2 : 0, 22, other)).ToList();
        Assert.Equal(doubted, Doubted(weather, "sprinklers may reach it"));
    }

    [Theory]
    [InlineData(15, true, true)] // half an hour after the start of 15:00
    [InlineData(16, true, false)] // and an hour and a half: 4 minutes were over long ago, an hour would not have been
    [InlineData(15, false, false)] // its own start is at 22:00
    public void So_is_one_that_is_wet_only_while_a_grow_in_runs(int hour, bool growsIn, bool doubted)
    {
        LogEntry growIn = new()
        {
            Time = new(SmallCourse.Monday.AddDays(-6), new(4, 0)),
            Kind = LogKind.GrowIn,
            Where = new(PlaceKind.Program, "C1", "P1"),
            Times = 6,
            Value = 4,
            Unit = LogUnit.Minutes,
            Until = new(SmallCourse.Monday.AddDays(60), null),
        };
        Assert.Equal(doubted, Doubted([.. Enumerable.Range(-5, 5).Select(i => Two(i, 2, hour, 0))], "sprinklers may reach it", growsIn ? [growIn] : []));
    }

    [Theory]
    [InlineData(1.0, true)]
    [InlineData(1.9, true)]
    [InlineData(2.0, false)] // a quarter, no less
    [InlineData(5.0, false)]
    public void A_gauge_that_shows_far_less_than_the_others_is_doubted(double here, bool doubted) =>
        Assert.Equal(doubted, Doubted([.. Enumerable.Range(-5, 5).Select(i => Two(i, here, 12, 8))], "may be blocked"));

    [Theory]
    [InlineData("4 4 4 4 4", "8 8 8 8 8", true)] // half of it, on every day
    [InlineData("4 4 4 4 9", "8 8 8 8 8", false)] // 25 of 40: more than 0.6
    [InlineData("6 6 6 6 6", "10 10 10 10 10", false)] // just 0.6
    [InlineData("2 2 2 2 8", "8 8 8 8 8", true)] // less on four days of five
    [InlineData("2 2 2 8 8", "8 8 8 8 8", false)] // on three
    [InlineData("2 2 2 2 2", "5 5 5 5 5", true)]
    [InlineData("2 2 2 2 2", "5 5 5 5 4.9", false)] // one of the days is none on which it fell everywhere
    [InlineData("4 4 4 4", "8 8 8 8", false)] // too few days of rain
    [InlineData("8 8 8 8 0", "8 8 8 8 60", false)] // one storm that passed it by
    [InlineData("8 8 8 8 8", "4 4 4 4 4", false)] // those of the others are too small to count, and it shows more
    public void A_gauge_that_shows_half_of_the_others_for_weeks_is_doubted(string here, string there, bool doubted)
    {
        double[] yard = Depths(here), barn = Depths(there);
        Assert.Equal(doubted, Doubted([.. yard.Select((mm, i) => Two(i - yard.Length, mm, 12, barn[i]))], "may be half blocked"));
    }

    [Theory]
    [InlineData(3, "16:30", true)] // four hours after the other gauge's last rain
    [InlineData(3, "16:29", false)]
    [InlineData(2, "16:30", false)] // too few days
    public void A_gauge_that_trickles_on_for_hours_is_doubted(int days, string last, bool doubted)
    {
        var weather = Enumerable.Range(-days, days).Select(i => Two(i, 8, 12, 8)).Select(d => d with { Rain = [Falls("yard", d.Date, "11:30", last), Falls("barn", d.Date, "11:30", "12:30")] });
        Assert.Equal(doubted, Doubted([.. weather], "it still trickled 4 h and more"));
    }

    [Theory]
    [InlineData("22:00", false)] // as the run began
    [InlineData("22:01", true)]
    public void What_fell_before_a_run_is_not_from_it(string at, bool doubted)
    {
        var weather = Enumerable.Range(-3, 3).Select(i => Two(i, 8, 12, 0)).Select(d => d with { Rain = [Falls("yard", d.Date, at), d.Rain[1]] });
        Assert.Equal(doubted, Doubted([.. weather], "sprinklers may reach it"));
    }

    [Theory]
    [InlineData(-14, 22, 2, 0, "sprinklers may reach it", true)]
    [InlineData(-15, 22, 2, 0, "sprinklers may reach it", false)] // one of the three days is longer ago than a fortnight
    [InlineData(-30, 12, 1, 8, "may be blocked", true)]
    [InlineData(-31, 12, 1, 8, "may be blocked", false)]
    public void What_is_longer_ago_is_not_doubted_any_more(int first, int hour, double here, double there, string words, bool doubted) => Assert.Equal(
        doubted, Doubted([.. Enumerable.Range(first, -first).Select(i => i < first + 3 ? Two(i, here, hour, there) : Two(i, 0, 12, 0))], words));

    private static GaugeDay Falls(string gauge, DateOnly date, params string[] at) =>
        new(gauge, 8, [.. at.Select(t => new RainFall(new DateTimeOffset(date.ToDateTime(TimeOnly.ParseExact(t, "HH:mm", CultureInfo.InvariantCulture)), TimeSpan.Zero), 8.0 / at.Length))], RainBasis.Measured, 0);

    private static double[] Depths(string mm) => [.. mm.Split(' ').Select(x => double.Parse(x, CultureInfo.InvariantCulture))];

    private static bool Doubted(IReadOnlyList<WeatherDay> weather, string words, params LogEntry[] log)
    {
        var course = Course(10) with { Log = log, Weather = weather, Described = s => s with { Start = OneZone.First.AddDays(-60), Weather = s.Weather with { Gauges = [new Gauge("yard", null), new Gauge("barn", null)] } } };
        return course.Sheet().Freshness.Doubts.Select(d => d.ToString()).Any(d => d.StartsWith("Gauge yard", StringComparison.Ordinal) && d.Contains(words, StringComparison.Ordinal));
    }

    private static SmallCourse Course(double depletionMm) => SmallCourse.OneStation(depletionMm, Probed);

    private static ZoneDay ZoneDayOf(params LogEntry[] log) =>
        Assert.Single(OneZone.Run(OneZone.Site(Probed), [OneZone.Day(3, 0)], 10, [.. log.Select(e => e with { Time = new(OneZone.First.AddDays(3), e.Time.Clock) })]));

    private static LogEntry Reading(int hour, int minute, double percent) => Entry(LogKind.Probe, new(hour, minute), percent, LogUnit.Percent);

    private static LogEntry Entry(LogKind kind, TimeOnly at, double value, LogUnit unit) =>
        new() { Time = new(SmallCourse.Monday, at), Kind = kind, Where = Here, Value = value, Unit = unit };

    private static WeatherDay OneDay(int after, double rainMm) => Two(after, rainMm, 0, 0) with { Rain = [Gauge("yard", after, rainMm, 0)] };

    private static WeatherDay Two(int after, double yardMm, int hour, double barnMm) => new()
    {
        Date = SmallCourse.Monday.AddDays(after),
        Station = "shop",
        EtoMm = 5,
        Basis = EtoBasis.Daily,
        Rain = [Gauge("yard", after, yardMm, hour), Gauge("barn", after, barnMm, 12)],
    };

    private static GaugeDay Gauge(string name, int after, double mm, int hour) => new(
        name, mm, mm > 0 ? [new RainFall(new DateTimeOffset(SmallCourse.Monday.AddDays(after).ToDateTime(new(hour, 30)), TimeSpan.Zero), mm)] : [], RainBasis.Measured, 0);
}
