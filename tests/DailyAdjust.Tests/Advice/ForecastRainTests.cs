using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>
/// What forecast rain may do. The small course may skip from 10 mm with 70 % on; it is visited daily, so that this morning's horizon closes
/// on Tuesday at 13:00.
/// </summary>
public class ForecastRainTests
{
    private static readonly DateTimeOffset Midnight = new(2026, 5, 4, 0, 0, 0, TimeSpan.Zero);
    private static readonly ForecastRain MaySkip = new(MaySkip: true, LeastChancePercent: 70, LeastAmountMm: 10);

    /// <summary>25 mm missing tonight and 30 tomorrow, of 50 allowed: 250 % would fill it, the present 100 % will do, and it can wait.</summary>
    private static readonly SmallCourse Thirsty = SmallCourse.OneStation(20) with { ForecastRain = MaySkip };

    [Theory]
    [InlineData(10d, 70d, AdviceKind.Skip)] // both just met
    [InlineData(9.99, 70d, AdviceKind.Leave)]
    [InlineData(10d, 69.9, AdviceKind.Leave)]
    [InlineData(10d, null, AdviceKind.Leave)] // nobody says how likely
    [InlineData(null, 100d, AdviceKind.Leave)] // nobody says how much
    public void It_skips_from_both_thresholds_on(double? mm, double? chance, AdviceKind expected)
    {
        var advice = (Thirsty with { Forecast = Days(new RainAhead(At(16), At(20), mm, chance)) }).Advice();
        Assert.Equal((expected, 250d), (advice.Advice, advice.ExactPercent!.Value));
    }

    [Theory]
    [InlineData(36, 37, AdviceKind.Skip)] // to 13:00 on Tuesday
    [InlineData(37, 38, AdviceKind.Leave)] // from then on Tuesday's visit decides
    [InlineData(36, 38, AdviceKind.Leave)] // half of it falls in time, and half is not enough
    [InlineData(22, 26, AdviceKind.Leave)] // 5 mm on each of two days
    [InlineData(22, 24, AdviceKind.Skip)]
    [InlineData(3, 5, AdviceKind.Leave)] // over before the sheet was made
    public void It_must_fall_on_one_day_before_the_next_visit(int from, int to, AdviceKind expected) =>
        Assert.Equal(expected, (Thirsty with { Forecast = Days(new RainAhead(At(from), At(to), 10, 90)) }).Advice().Advice);

    [Fact]
    public void With_two_visits_a_week_it_looks_as_far_as_the_next_one()
    {
        var box = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00") with { Visit = new VisitDays.Weekdays([DayOfWeek.Monday, DayOfWeek.Thursday]) }] };
        var course = Thirsty with { Controller = box, Forecast = Days(new RainAhead(At(62), At(64), 12, 80)) };
        Assert.Equal(AdviceKind.Skip, course.Advice().Advice);
        Assert.Equal(SmallCourse.Monday.AddDays(3), course.Advice().LookAgain);
    }

    [Theory]
    [InlineData(40, AdviceKind.Skip)] // 50 tomorrow night: just within
    [InlineData(40.1, AdviceKind.Leave)]
    [InlineData(60, AdviceKind.Set)]
    public void Ground_that_cannot_wait_without_that_rain_is_watered(double depletionMm, AdviceKind expected) =>
        Assert.Equal(expected, (SmallCourse.OneStation(depletionMm) with { ForecastRain = MaySkip, Forecast = Wet() }).Advice().Advice);

    [Fact]
    public void Where_it_is_only_noted_it_changes_nothing()
    {
        var dry = (Thirsty with { ForecastRain = ForecastRain.OnlyNoted }).Sheet();
        var noted = (Thirsty with { ForecastRain = ForecastRain.OnlyNoted, Forecast = Wet(), ForecastIssued = Midnight }).Sheet();
        Assert.Equal(AdviceKind.Leave, dry.Programs[0].Advice);
        Same(dry, noted);
        Assert.Equal(25, noted.Forecast!.Days[0].DayRain!.Mm!.Value, 1e-9);
        Assert.Null(dry.Forecast);
    }

    [Fact]
    public void Without_a_forecast_nothing_changes() => Assert.Equal(AdviceKind.Leave, Thirsty.Advice().Advice);

    [Fact]
    public void Forecast_rain_is_never_in_the_ground()
    {
        var (dry, wet) = (Thirsty.Sheet(), (Thirsty with { Forecast = Wet() }).Sheet());
        Assert.Equal(AdviceKind.Skip, wet.Programs[0].Advice);
        Assert.Equal(dry.Programs[0].ExactPercent, wet.Programs[0].ExactPercent);
        Assert.Equal(dry.Programs[0].Zones[0].DepletionMm, wet.Programs[0].Zones[0].DepletionMm);
        Assert.Equal(dry.Areas.SelectMany(a => a.Days), wet.Areas.SelectMany(a => a.Days));
        Assert.Equal(dry.Outlook, wet.Outlook);
    }

    [Fact]
    public void Off_it_stays_off_and_a_number_that_would_be_set_is_not()
    {
        var off = Thirsty with { Log = [Entry(LogKind.Off)] };
        Assert.Equal((AdviceKind.Resume, AdviceKind.KeepOff), (off.Advice().Advice, (off with { Forecast = Wet() }).Advice().Advice));

        // 10 mm missing tonight: of 200 % half would drain.
        var much = SmallCourse.OneStation(5) with { ForecastRain = MaySkip, Log = [Entry(LogKind.Setting) with { Value = 200, Unit = LogUnit.Percent }] };
        Assert.Equal((AdviceKind.Set, AdviceKind.Skip), (much.Advice().Advice, (much with { Forecast = Wet() }).Advice().Advice));
    }

    [Fact]
    public void Holds_rules_and_weather_that_is_too_old_come_first()
    {
        var wet = Thirsty with { Forecast = Wet() };
        Assert.Equal(AdviceKind.Off, (wet with { Log = [Entry(LogKind.Hold)] }).Advice().Advice);
        Assert.Equal(AdviceKind.Off, wet.With(new Restriction { Name = "no Mondays", DaysNotAllowed = new WaterDays.Weekdays([DayOfWeek.Monday]) }).Advice);
        Assert.Equal(AdviceKind.AsSet, (wet with { NewestReading = Midnight.AddDays(-3) }).Advice().Advice);
    }

    [Fact]
    public void A_box_with_one_dial_skips_only_if_all_its_ground_can_wait()
    {
        SmallCourse Box(double secondMm) => new()
        {
            Controller = SmallCourse.Box with { Applies = PercentApplies.Controller, Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "22:00")] },
            Stations = [SmallCourse.Station(1, programs: "P1"), SmallCourse.Station(2, programs: "P2")],
            DepletionMm = [20, secondMm],
            ForecastRain = MaySkip,
            Forecast = Wet(),
        };
        Assert.All(Box(20).Sheet().Programs, p => Assert.Equal(AdviceKind.Skip, p.Advice));
        Assert.All(Box(60).Sheet().Programs, p => Assert.Equal(AdviceKind.Set, p.Advice));
    }

    [Fact]
    public void The_reason_says_that_it_rests_on_a_forecast_and_what_to_do_if_no_rain_comes()
    {
        // Left out tonight, 30 mm are missing tomorrow night, and 35 on Wednesday.
        var advice = (Thirsty with { Forecast = Wet() }).Advice();
        Assert.Equal(
            "Rests on a forecast: 25.0 mm of rain on Mon 4 May, chance 90 %, and the ground can wait without this water. If it does not rain, turn it on again Tue 5 May at about 200 %.",
            advice.Reason.ToString());
        Assert.Equal(("rain-forecast", 90d), (advice.Chain[0].Code, advice.Chain[0].Data["forecastChancePercent"]));
        Assert.Equal(25, advice.Chain[0].Data["forecastRainMm"], 1e-9);
        Assert.Equal(SmallCourse.Monday.AddDays(1), advice.LookAgain);
    }

    [Fact]
    public void Expected_ETo_follows_the_forecast_temperatures()
    {
        // 5 mm by the normals; a hot day draws more from the same ground, and only the days that are forecast do.
        var hot = Thirsty with { Forecast = [new ForecastDay(SmallCourse.Monday, 36, 16)] };
        var eto = HargreavesSamani.EtoMm(36, 16, Sun.ExtraterrestrialRadiationMJPerM2Day(30, SmallCourse.Monday.DayOfYear));
        Assert.InRange(eto, 6, 9);
        Assert.Equal(eto, hot.Sheet().Freshness.ExpectedEtoMm!.Value, 1e-6);
        Assert.Equal((20 + eto) * 10, hot.Advice().ExactPercent!.Value, 2e-4);
        Assert.Equal(5, (Thirsty with { Forecast = [new ForecastDay(SmallCourse.Monday, 36, null)] }).Sheet().Freshness.ExpectedEtoMm);
        Assert.Equal(5, (Thirsty with { Forecast = [new ForecastDay(SmallCourse.Monday.AddDays(1), 36, 16)] }).Sheet().Freshness.ExpectedEtoMm);
    }

    private static LogEntry Entry(LogKind kind) => new() { Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)), Kind = kind, Where = new(PlaceKind.Program, "C1", "P1") };

    private static DateTimeOffset At(int hour) => Midnight.AddHours(hour);

    private static ForecastDay[] Wet() => Days(new RainAhead(At(12), At(18), 25, 90));

    /// <summary>The rain by the hour, each hour in its day.</summary>
    private static ForecastDay[] Days(RainAhead rain)
    {
        var hours = Enumerable.Range(0, 96).Select(h => rain.Within(At(h), At(h + 1))).OfType<RainAhead>().ToLookup(r => DateOnly.FromDateTime(r.Begin.UtcDateTime));
        return [.. Enumerable.Range(0, 4).Select(d => SmallCourse.Monday.AddDays(d)).Select(date => new ForecastDay(date, null, null) { Rain = [.. hours[date]] })];
    }

    private static void Same(MorningSheet one, MorningSheet other) => Assert.Equal(
        one.Programs.Select(p => (p.Advice, p.Percent, p.ExactPercent, p.Reason)), other.Programs.Select(p => (p.Advice, p.Percent, p.ExactPercent, p.Reason)));
}
