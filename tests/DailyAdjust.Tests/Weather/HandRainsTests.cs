using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

/// <summary>Readings of a gauge by hand beside its instrument, on a morning at 05:00 on which the instrument knows 1 mm of every hour.</summary>
public sealed class HandRainsTests
{
    private static readonly DateOnly Today = new(2026, 6, 10);
    private static readonly DateOnly Yesterday = Today.AddDays(-1);
    private static readonly WeatherScene Scene = new() { Gauges = [new Gauge("yard", "yard"), new Gauge("far", null)] };
    private static readonly IReadOnlyList<Reading> Wet = Scene.Steady(Today.AddDays(-3), Today, rainMm: 1);
    private static readonly DateTimeOffset AsOf = At(Today, 5);

    [Fact]
    public void A_first_reading_reaches_24_hours_back_and_stands_beside_what_the_instrument_measured_in_them()
    {
        var rain = Assert.Single(Of([WeatherScene.Rain("yard", Today, "04:00", 9)]));
        Assert.Equal(new HandRain("yard", At(Yesterday, 4), At(Today, 4), 9, Yesterday) { Station = "yard", InstrumentMm = 24 }, rain);
    }

    [Fact]
    public void A_reading_since_the_last_entry_begins_there_and_is_booked_to_that_date()
    {
        var rains = Of([WeatherScene.Rain("yard", Today, "00:30", 0), WeatherScene.Rain("yard", Today, "05:00", 8)]);
        Assert.Equal((At(Today, 0).AddMinutes(30), AsOf, Today), (rains[1].From, rains[1].To, rains[1].BookedTo));
        Assert.Equal(4.5, rains[1].InstrumentMm);
    }

    [Fact]
    public void The_total_of_a_running_date_counts_once_it_was_given_and_the_instrument_shows_what_it_has_so_far()
    {
        LogEntry[] total = [WeatherScene.Rain("yard", Today, null, 7)];
        Assert.Empty(Of(total));
        var rain = Assert.Single(Of([], total));
        Assert.Equal(new HandRain("yard", At(Today, 0), Scene.Clock.DayEnd(Today), 7, Today) { IsWholeDate = true, Station = "yard", InstrumentMm = 5 }, rain);

        var soFar = WeatherDays.RainSinceMidnight(Scene.Site, Today, AsOf, Readings(Wet), [], total)[0];
        Assert.Equal((7, RainBasis.Logbook), (soFar.RainMm!.Value, soFar.Basis));
        Assert.Equal([new RainFall(At(Today, 0), 7)], soFar.Falls);
    }

    [Fact]
    public void A_total_given_again_takes_the_place_of_the_first()
    {
        LogEntry[] totals = [WeatherScene.Rain("yard", Today, null, 7), WeatherScene.Rain("yard", Today, null, 9, ordinal: 1)];
        Assert.Equal(9, Assert.Single(Of([], totals)).Mm);
        Assert.Equal(9, WeatherDays.RainSinceMidnight(Scene.Site, Today, AsOf, Readings(Wet), [], totals)[0].RainMm);
    }

    [Fact]
    public void A_total_that_comes_in_after_a_reading_does_not_push_that_readings_rain_into_the_next_day()
    {
        var (reading, total) = (WeatherScene.Rain("yard", Today, "04:00", 12), WeatherScene.Rain("yard", Yesterday, null, 20));
        var later = Of([reading, total]).Single(r => !r.IsWholeDate);
        Assert.Equal((At(Yesterday, 4), Yesterday, false), (later.From, later.BookedTo, later.Counts));

        // One that was there before tells that the reading speaks of the hours since midnight.
        var before = Of([total, reading]).Single(r => !r.IsWholeDate);
        Assert.Equal((At(Today, 0), Today, true), (before.From, before.BookedTo, before.Counts));
    }

    [Fact]
    public void Beside_the_total_of_its_date_a_reading_is_not_counted()
    {
        LogEntry[] log = [WeatherScene.Rain("yard", Today, "01:00", 0), WeatherScene.Rain("yard", Today, "04:00", 2)];
        var rains = Of(log, [WeatherScene.Rain("yard", Today, null, 7)]);
        Assert.Equal([true, false, true], rains.Select(r => r.Counts));
        Assert.Equal(7, WeatherDays.RainSinceMidnight(Scene.Site, Today, AsOf, Readings(Wet), log, [WeatherScene.Rain("yard", Today, null, 7)])[0].RainMm);
    }

    [Fact]
    public void A_reading_of_yesterday_whose_hours_lie_in_todays_total_too_says_so()
    {
        LogEntry[] log = [WeatherScene.Rain("yard", Today, "04:00", 2)];
        Assert.Null(Of(log)[0].InTotalOf);
        Assert.Equal(Today, Of(log, [WeatherScene.Rain("yard", Today, null, 7)])[0].InTotalOf);
        Assert.Null(Of(log, [WeatherScene.Rain("yard", Today, null, 0)])[0].InTotalOf);
    }

    [Fact]
    public void What_the_instrument_does_not_know_is_said_and_nothing_of_the_time_is_nothing()
    {
        var until = At(Yesterday, 14);
        var rain = Of([WeatherScene.Rain("yard", Today, "04:00", 9)], readings: [.. Wet.Where(r => r.End <= until)])[0];
        Assert.Equal((10d, TimeSpan.FromHours(14)), (rain.InstrumentMm!.Value, rain.InstrumentMissing));
        var silent = Of([WeatherScene.Rain("yard", Today, "04:00", 9)], readings: [])[0];
        Assert.Equal(("yard", (double?)null), (silent.Station, silent.InstrumentMm));
    }

    [Fact]
    public void A_gauge_that_is_read_by_hand_only_has_no_instrument_and_older_readings_are_left_out()
    {
        var rain = Assert.Single(Of([WeatherScene.Rain("far", Yesterday.AddDays(-1), "07:00", 3), WeatherScene.Rain("far", Today, "04:00", 9)]));
        Assert.Equal(("far", "", (double?)null), (rain.Gauge, rain.Station, rain.InstrumentMm));
    }

    private static IReadOnlyList<HandRain> Of(IReadOnlyList<LogEntry> log, IReadOnlyList<LogEntry>? totals = null, IReadOnlyList<Reading>? readings = null) =>
        HandRains.Of(Scene.Site, Yesterday, AsOf, Readings(readings ?? Wet), log, totals ?? []);

    private static Dictionary<string, IReadOnlyList<Reading>> Readings(IReadOnlyList<Reading> readings) => new(StringComparer.Ordinal) { ["yard"] = readings };

    private static DateTimeOffset At(DateOnly date, int hour) => Scene.Clock.ToInstant(date, new TimeOnly(hour, 0));
}
