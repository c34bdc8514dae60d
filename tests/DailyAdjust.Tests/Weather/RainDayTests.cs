using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

/// <summary>A gauge's rain on a date: by its instrument, by hand, by both, unknown.</summary>
public sealed class RainDayTests
{
    private static readonly DateOnly Day = new(2026, 6, 10);
    private static readonly DateOnly Next = Day.AddDays(1);
    private static readonly WeatherScene Scene = new() { Gauges = [new Gauge("yard", "yard"), new Gauge("far", null)] };

    private static readonly IReadOnlyList<Reading> Wet = Scene.Steady(Day.AddDays(-2), Next, rainMm: 1);

    [Fact]
    public void Interval_rain_is_booked_at_the_intervals_end()
    {
        var day = Gauge("yard", Wet);
        Assert.Equal(24, day.RainMm);
        Assert.Equal(Scene.Clock.DayStart(Day).AddHours(1), day.Falls[0].At);
        Assert.Equal(Scene.Clock.DayEnd(Day), day.Falls[^1].At);
    }

    [Fact]
    public void A_daily_total_is_booked_at_midnight()
    {
        var scene = new WeatherScene { Stations = [WeatherScene.Source("yard", 0)] };
        var reading = new Reading { Begin = scene.Clock.DayStart(Day), End = scene.Clock.DayEnd(Day), RainMm = 7 };
        var gauge = scene.Days(Day, Day, ("yard", [reading]))[0].RainAt("yard");
        Assert.Equal([new RainFall(scene.Clock.DayStart(Day), 7)], gauge.Falls);
    }

    [Fact]
    public void Less_than_nine_tenths_is_unknown_and_never_zero()
    {
        var gauge = Gauge("yard", [.. Wet.Where((_, i) => i % 24 >= 3)]);
        Assert.Null(gauge.RainMm);
        Assert.Equal(RainBasis.Unknown, gauge.Basis);
        Assert.Empty(gauge.Falls);
        Assert.Equal(21, gauge.MeasuredPartMm);
    }

    [Fact]
    public void Missing_rain_is_not_interpolated()
    {
        var gauge = Gauge("yard", [.. Wet.Select((r, i) => i % 24 is 5 or 6 ? r with { RainMm = double.NaN } : r)]);
        Assert.Equal(22, gauge.RainMm);
    }

    [Fact]
    public void A_bare_date_is_that_dates_total_in_place_of_everything()
    {
        var gauge = Gauge("yard", Wet, WeatherScene.Rain("yard", Day, null, 5), WeatherScene.Rain("yard", Day, "16:00", 2), WeatherScene.Rain("yard", Day, "08:00", 2));
        Assert.Equal(5, gauge.RainMm);
        Assert.Equal(RainBasis.Logbook, gauge.Basis);
        Assert.Equal([new RainFall(Scene.Clock.DayStart(Day), 5)], gauge.Falls);
    }

    [Fact]
    public void A_bare_zero_makes_an_unknown_day_dry()
    {
        var gauge = Gauge("yard", [], WeatherScene.Rain("yard", Day, null, 0));
        Assert.Equal(0, gauge.RainMm);
        Assert.Equal(RainBasis.Logbook, gauge.Basis);
        Assert.Empty(gauge.Falls);
    }

    [Fact]
    public void An_entry_reaches_24_hours_back_and_belongs_to_the_date_in_which_that_begins()
    {
        var entry = WeatherScene.Rain("yard", Next, "06:00", 9);
        var days = Days(Wet, entry);

        // 10 June 06:00 to 11 June 06:00 is the entry's; before and after it the instrument's.
        var first = days[0].RainAt("yard");
        Assert.Equal(6 + 9, first.RainMm);
        Assert.Equal(new RainFall(Scene.Clock.DayEnd(Day), 9), first.Falls[^1]);
        Assert.Equal(RainBasis.Logbook, first.Basis);

        var second = days[1].RainAt("yard");
        Assert.Equal(18, second.RainMm);
        Assert.Equal(RainBasis.Logbook, second.Basis);
        Assert.Equal(Scene.Clock.DayStart(Next).AddHours(7), second.Falls[0].At);
    }

    [Fact]
    public void An_entry_reaches_back_to_the_last_one_and_is_booked_at_its_time()
    {
        var gauge = Gauge("yard", Wet, WeatherScene.Rain("yard", Day, "15:00", 3), WeatherScene.Rain("yard", Day, "09:00", 0.5));

        // 00:00-09:00 belongs to the day before; 09:00-15:00 gave 3 mm; then 9 hours of the instrument.
        Assert.Equal(3 + 9, gauge.RainMm);
        Assert.Equal(new RainFall(Scene.Clock.DayStart(Day).AddHours(15), 3), gauge.Falls[0]);
    }

    [Fact]
    public void After_a_bare_date_the_next_entry_begins_at_its_midnight()
    {
        var days = Days(Wet, WeatherScene.Rain("yard", Day, null, 4), WeatherScene.Rain("yard", Next, "06:00", 2));
        Assert.Equal(4, days[0].RainAt("yard").RainMm);
        Assert.Equal(2 + 18, days[1].RainAt("yard").RainMm);
    }

    [Fact]
    public void Where_an_entry_cuts_an_interval_the_rest_of_it_counts()
    {
        var gauge = Gauge("yard", Wet, WeatherScene.Rain("yard", Day, "09:00", 0), WeatherScene.Rain("yard", Day, "12:15", 0));
        Assert.Equal(0.75 + 11, gauge.RainMm!.Value, 1e-12);
        Assert.Equal(Scene.Clock.DayStart(Day).AddHours(13), gauge.Falls[0].At);
    }

    [Fact]
    public void A_gauge_read_by_hand_is_unknown_until_it_is_read_after_the_days_end()
    {
        LogEntry[] evening = [WeatherScene.Rain("far", Day, "07:00", 1), WeatherScene.Rain("far", Day, "19:00", 2)];
        var before = Gauge("far", Wet, evening);
        Assert.Null(before.RainMm);
        Assert.Equal(2, before.MeasuredPartMm);

        var after = Gauge("far", Wet, [.. evening, WeatherScene.Rain("far", Next, "07:00", 5)]);
        Assert.Equal(2 + 5, after.RainMm);
        Assert.Equal(RainBasis.Logbook, after.Basis);
    }

    [Fact]
    public void The_first_reading_of_a_gauge_makes_the_day_before_known()
    {
        var gauge = Gauge("far", Wet, WeatherScene.Rain("far", Next, "07:00", 5));
        Assert.Equal(5, gauge.RainMm);
    }

    [Fact]
    public void A_day_covered_by_spans_that_begin_on_other_days_is_known_to_be_dry()
    {
        var days = Days(Wet, WeatherScene.Rain("far", Day, "00:00", 1), WeatherScene.Rain("far", Next, "00:00", 0));
        Assert.Equal(0, days[0].RainAt("far").RainMm);
        Assert.Null(days[1].RainAt("far").RainMm);
        Assert.Null(Gauge("far", Wet).RainMm);
    }

    [Fact]
    public void Entries_of_another_gauge_or_kind_do_not_count()
    {
        var hose = WeatherScene.Rain("yard", Day, null, 30) with { Kind = LogKind.Hose };
        Assert.Equal(24, Gauge("yard", Wet, WeatherScene.Rain("far", Day, null, 30), hose).RainMm);
    }

    [Fact]
    public void Rain_since_midnight_counts_what_ended_by_the_report_hour_and_nothing_later()
    {
        var asOf = Scene.Clock.ToInstant(Day, new TimeOnly(5, 0));
        Assert.Equal(5, SinceMidnight(asOf, Wet)[0].RainMm);
        Assert.Equal(4, SinceMidnight(asOf.AddSeconds(-1), Wet)[0].RainMm);
        Assert.Equal(24, Gauge("yard", Wet).RainMm);
        Assert.Null(SinceMidnight(asOf, Wet)[1].RainMm);
    }

    [Fact]
    public void Rain_since_midnight_takes_an_entry_by_its_time()
    {
        var asOf = Scene.Clock.ToInstant(Day, new TimeOnly(5, 0));
        LogEntry[] log = [WeatherScene.Rain("yard", Day, "00:30", 0), WeatherScene.Rain("yard", Day, "05:00", 8), WeatherScene.Rain("yard", Day, null, 50)];
        var gauge = WeatherDays.RainSinceMidnight(Scene.Site, Day, asOf, Readings(Wet), log)[0];
        Assert.Equal(8, gauge.RainMm);
        Assert.Equal([new RainFall(asOf, 8)], gauge.Falls);
    }

    private static IReadOnlyList<GaugeDay> SinceMidnight(DateTimeOffset asOf, IReadOnlyList<Reading> readings) =>
        WeatherDays.RainSinceMidnight(Scene.Site, Day, asOf, Readings(readings), []);

    private static Dictionary<string, IReadOnlyList<Reading>> Readings(IReadOnlyList<Reading> readings) =>
        new(StringComparer.Ordinal) { ["yard"] = readings };

    private static GaugeDay Gauge(string gauge, IReadOnlyList<Reading> readings, params LogEntry[] log) => Days(readings, log)[0].RainAt(gauge);

    private static IReadOnlyList<WeatherDay> Days(IReadOnlyList<Reading> readings, params LogEntry[] log) =>
        Scene.Days(Day, Next, log, ("yard", readings));
}
