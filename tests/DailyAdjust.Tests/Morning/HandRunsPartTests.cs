using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Advice;
using Xunit;

namespace DailyAdjust.Tests.Morning;

/// <summary>Water-in and flush. 10 mm an hour, efficiency 1, start at 22:00.</summary>
public class HandRunsPartTests
{
    private static readonly DateOnly Monday = SmallCourse.Monday;
    private static readonly DateOnly Sunday = Monday.AddDays(-1);
    private static readonly Place Here = new(PlaceKind.Station, "C1", "1");
    private static readonly LogEntry WaterIn = At(23) with { Kind = LogKind.WaterIn, Value = 10, Unit = LogUnit.Mm, Until = new(Monday, new(18, 0)), By = "Ines", Note = "granular" };

    [Fact]
    public void A_depth_is_minutes_until_it_has_come()
    {
        Assert.Equal(60, Minutes(WaterIn));
        Assert.Equal(30, Minutes(WaterIn, At(23, 30) with { Kind = LogKind.Run, Value = 30, Unit = LogUnit.Minutes }));
        Assert.Equal(36, Minutes(WaterIn, At(23, 30) with { Kind = LogKind.Hose, Value = 4, Unit = LogUnit.Mm }));
        Assert.Equal(60, Minutes(WaterIn, At(22, 30) with { Kind = LogKind.Run, Value = 30, Unit = LogUnit.Minutes })); // before it was ordered
        Assert.Null(Minutes(WaterIn, At(23, 30) with { Kind = LogKind.Run, Value = 60, Unit = LogUnit.Minutes }));
    }

    [Fact]
    public void Rain_and_the_programs_own_starts_bring_it_too()
    {
        var rain = Course(WaterIn) with { RainSinceMidnight = [new(new DateTimeOffset(2026, 5, 4, 3, 0, 0, TimeSpan.Zero), 2.5)] };
        Assert.Equal(45, rain.Sheet().Exceptions.HandRuns[0].Stations[0].Minutes);
        var before = WaterIn with { Time = new(Sunday, new(21, 0)) };
        Assert.Null(Minutes(before)); // 60 min at 22:00
        Assert.Equal(60, Minutes(before, At(23) with { Kind = LogKind.Ran, Value = 0, Unit = LogUnit.Percent }));
    }

    [Fact]
    public void An_order_for_later_says_when_it_begins_and_an_order_against_it_stands_beside_it()
    {
        LogEntry dry = At(9) with { Kind = LogKind.NoWater, Until = new(Monday, new(12, 0)), Note = "foliar feeding" };
        var order = Assert.Single(Course(WaterIn with { Time = new(Monday, new(8, 0)) }, dry).Sheet().Exceptions.HandRuns);
        Assert.Equal(new DateTimeOffset(2026, 5, 4, 8, 0, 0, TimeSpan.Zero), order.Begins);
        Assert.Equal("no water, foliar feeding", Assert.Single(order.Against).What.ToString());
        Assert.Empty(Course(WaterIn with { Time = new(Monday, new(12, 0)) }, dry).Sheet().Exceptions.HandRuns[0].Against);
    }

    [Theory]
    [InlineData("10:00", "18:00", "2026-01-01", true)]
    [InlineData("20:00", "22:00", "2026-01-01", false)] // it is due before
    [InlineData("10:00", "18:00", "2026-06-01", false)] // not yet in force
    [InlineData("22:00", "06:00", "2026-01-01", true)] // began yesterday, and it is 05:00
    [InlineData("18:00", "20:00", "2026-01-01", false)] // begins as it is due
    public void A_watering_rule_whose_hours_lie_before_it_is_due_stands_beside_it(string from, string to, string since, bool beside)
    {
        var rule = new Restriction { Name = "city hours", From = DateOnly.ParseExact(since, "yyyy-MM-dd", null), HoursNotAllowed = new(TimeOnly.ParseExact(from, "HH:mm", null), TimeOnly.ParseExact(to, "HH:mm", null)) };
        var order = Assert.Single((Course(WaterIn) with { Restrictions = [rule] }).Sheet().Exceptions.HandRuns);
        Assert.Equal(beside ? [rule] : [], order.Rules);
    }

    [Theory]
    [InlineData(null, 1, 60, 0)] // nothing may stand on the surface: no split helps
    [InlineData(2.0, 3, 20, 24)] // 10 mm an hour on ground that takes 5 and holds 2: 24 minutes at once, 24 to take it in
    [InlineData(2.2, 3, 20, 27)] // 26.4 of both: runs are whole minutes and no longer, the soak no shorter
    [InlineData(0.55, 10, 6, 7)] // 6.6
    [InlineData(10.0, 1, 60, 0)]
    public void A_long_run_is_split_as_every_other(double? storageMm, int cycles, double minutes, double soak)
    {
        var soil = SmallCourse.Area.Soil with { IntakeRate = new ApplicationRate(5) };
        var area = SmallCourse.Area with { Soil = storageMm is { } mm ? soil with { SurfaceStorage = new Depth(mm) } : soil };
        var station = (SmallCourse.OneStation(60, area) with { Log = [WaterIn] }).Sheet().Exceptions.HandRuns[0].Stations[0];
        Assert.Equal((60d, cycles, minutes, soak), (station.Minutes, station.Cycles, station.CycleMinutes, station.SoakMinutes));
    }

    [Fact]
    public void What_was_missed_is_told_for_a_day()
    {
        var late = Course(WaterIn with { Until = new(Monday, new(4, 0)) });
        Assert.True(Assert.Single(late.Sheet().Exceptions.HandRuns).IsLate);
        Assert.Empty((late with { Date = Monday.AddDays(1) }).Sheet().Exceptions.HandRuns);
    }

    [Theory]
    [InlineData(1.0, 78)]
    [InlineData(0.75, 104)]
    public void A_salt_flush_of_2_4_inches_on_3_2_acres_takes_208530_gallons(double uniformity, double minutes)
    {
        // [USGA 2017, seen]: 208530 gal; 78 min at full uniformity, 104 min at DU 0.75. The flow follows: 208530 gal in 78 min.
        const double litresPerGallon = 3.785411784, squareMetresPerAcre = 4046.8564224;
        var ground = 3.2 * squareMetresPerAcre;
        Assert.Equal(208530, 2.4 * Depth.MmPerInch * ground / litresPerGallon, 20d); // printed with an acre-inch of 27152 gal
        var rate = ApplicationRate.FromFlow(208530 * litresPerGallon / 78, ground);
        Assert.Equal(minutes, HandRunsPart.GrossMinutes(2.4 * Depth.MmPerInch, rate.MmPerHour, uniformity), 0.5);

        var area = SmallCourse.Area with { Efficiency = 0.4 + (0.6 * uniformity), DistributionUniformity = uniformity };
        var course = Course(WaterIn with { Kind = LogKind.Flush, Value = 2.4 * Depth.MmPerInch }) with { Stations = [SmallCourse.Station(1, area: area) with { Rate = rate }] };
        Assert.InRange(course.Sheet().Exceptions.HandRuns[0].Stations[0].Minutes, minutes, minutes + 1); // whole minutes, never less

        // What was measured at the station goes before what its area says.
        var measured = course with { Stations = [SmallCourse.Station(1) with { Rate = rate, DistributionUniformity = uniformity }] };
        Assert.InRange(measured.Sheet().Exceptions.HandRuns[0].Stations[0].Minutes, minutes, minutes + 1);
    }

    [Theory]
    [InlineData(2.0, null, true)] // the forecast counts, whatever last night was
    [InlineData(null, 3.0, true)]
    [InlineData(8.0, 3.0, false)]
    [InlineData(4.5, null, false)] // 40 °F = 4.44 °C
    public void A_cold_night_is_told_from_the_forecast_else_from_last_night_and_holds_only_where_the_site_says_so(double? ahead, double? lastNight, bool isCold)
    {
        var course = SmallCourse.OneStation(60) with
        {
            Forecast = [new ForecastDay(Monday, null, null) { Night = new ForecastNight(ahead, null, null) }],
            NightReadings = lastNight is { } c ? [Reading(c)] : [],
        };
        var night = course.Sheet().Exceptions.Night;
        Assert.Equal(isCold, night.Count == 1);
        Assert.All(night, n => Assert.Equal((OffReason.Cold, ahead is not null, false), (n.Reason, n.IsForecast, n.Holds)));
        Assert.Equal(AdviceKind.Set, course.Advice().Advice);
        var holds = course with { Described = s => s with { Cautions = new WeatherCautions { ColdHolds = true } } };
        Assert.Equal(isCold ? AdviceKind.Off : AdviceKind.Set, holds.Advice().Advice);
    }

    [Theory]
    [InlineData(UnitSystem.Us, 1.0, null, "34 °F forecast for tonight, below 40 °F")] // 1 × 1.8 + 32 = 33.8
    [InlineData(UnitSystem.Us, 4.4, null, "40 °F forecast for tonight, just below 40 °F")] // 39.9
    [InlineData(UnitSystem.Us, null, 2.2, "36 °F last night, below 40 °F; no forecast for tonight")]
    [InlineData(UnitSystem.Metric, 1.0, null, "1.0 °C forecast for tonight, below 4.4 °C")]
    public void A_cold_night_is_told_in_the_sites_units(UnitSystem units, double? ahead, double? lastNight, string words) =>
        Assert.Contains(words, HeldFor(units, new(ahead, null, null), lastNight is { } c ? [Reading(c)] : []), StringComparison.Ordinal);

    [Theory]
    [InlineData(UnitSystem.Us, 6, "13 mph forecast for tonight, above 10 mph")] // 6 / 0.44704 = 13.4
    [InlineData(UnitSystem.Us, 4.5, "10 mph forecast for tonight, just above 10 mph")]
    [InlineData(UnitSystem.Metric, 6, "6.0 m/s forecast for tonight, above 4.5 m/s")]
    public void So_is_a_windy_one(UnitSystem units, double mPerS, string words) =>
        Assert.Contains(words, HeldFor(units, new(null, mPerS, null), []), StringComparison.Ordinal);

    [Fact]
    public void Of_last_nights_winds_the_highest_counts() => Assert.Contains(
        "13 mph last night, above 10 mph; no forecast for tonight",
        HeldFor(UnitSystem.Us, new(null, null, null), [Reading(10) with { WindSpeedMPerS = 6 }, Reading(10) with { WindSpeedMPerS = 2 }]), StringComparison.Ordinal);

    [Fact]
    public void It_holds_from_todays_round_to_tomorrows()
    {
        // Nobody comes before Thursday: of three nights only Monday's is held.
        var mondayAndThursday = SmallCourse.EveryNight("P1", "22:00") with { Visit = new VisitDays.Weekdays([DayOfWeek.Monday, DayOfWeek.Thursday]) };
        var held = (SmallCourse.OneStation(60) with
        {
            Controller = SmallCourse.Box with { Programs = [mondayAndThursday] },
            Forecast = [new ForecastDay(Monday, null, null) { Night = new(1, null, null) }],
            Described = s => s with { Cautions = new WeatherCautions { ColdHolds = true } },
        }).Advice();
        Assert.Equal([Monday], held.TakenOut.Select(t => DateOnly.FromDateTime(t.At.UtcDateTime)));
    }

    [Fact]
    public void At_the_limit_itself_a_night_is_neither_cold_nor_windy()
    {
        var limits = new WeatherCautions();
        Assert.DoesNotContain("Must not run", HeldFor(UnitSystem.Us, new(limits.ColdBelowC, limits.WindAboveMPerS, null), []), StringComparison.Ordinal);
    }

    /// <summary>Why a program that needs water has to be off where the site holds for cold and wind.</summary>
    private static string HeldFor(UnitSystem units, ForecastNight night, IReadOnlyList<Reading> readings) => (SmallCourse.OneStation(60) with
    {
        Forecast = [new ForecastDay(Monday, null, null) { Night = night }],
        NightReadings = readings,
        Described = s => s with { Units = units, Cautions = new WeatherCautions { ColdHolds = true, WindHolds = true } },
    }).Advice().Reason.ToString();

    private static Reading Reading(double celsius)
    {
        var at = new DateTimeOffset(2026, 5, 4, 3, 0, 0, TimeSpan.Zero);
        return new Reading { Begin = at, End = at.AddHours(1), AirTemperatureC = celsius };
    }

    private static double? Minutes(params LogEntry[] log) => Course(log).Sheet().Exceptions.HandRuns.SingleOrDefault()?.Stations[0].Minutes;

    private static SmallCourse Course(params LogEntry[] log) => SmallCourse.OneStation(60) with { Log = log };

    private static LogEntry At(int hour, int minute = 0) => new() { Time = new(Sunday, new(hour, minute)), Kind = LogKind.Note, Where = Here };
}
