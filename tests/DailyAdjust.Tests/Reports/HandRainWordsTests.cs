using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Reports.Words;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>What a reading of a gauge by hand is said to be booked to, on Wednesday 10 June.</summary>
public sealed class HandRainWordsTests
{
    private static readonly DateOnly Today = new(2026, 6, 10);
    private static readonly DateTimeOffset Midnight = new(2026, 6, 10, 0, 0, 0, TimeSpan.Zero);
    private static readonly DateTimeOffset AsOf = Midnight.AddHours(5);
    private static readonly SiteWords Words = new(UnitSystem.Metric, new SiteClock(TimeZoneInfo.Utc), Today);

    private static readonly HandRain Timed = new("yard", Midnight.AddHours(-20), Midnight.AddHours(4), 9, Today.AddDays(-1)) { Station = "mast", InstrumentMm = 7.5 };
    private static readonly HandRain Total = new("yard", Midnight, Midnight.AddDays(1), 3, Today) { IsWholeDate = true, Station = "mast", InstrumentMm = 1 };

    [Fact]
    public void A_reading_with_a_time_names_its_span_its_date_and_what_it_stands_in_for() => Says(
        "Gauge yard, read by hand: 9.0 mm from 04:00 yesterday (24 hours back) to 04:00 today, booked as rain of yesterday, when that time begins. "
        + "It counts in place of station mast, which has 7.5 mm for that time: what a person read goes before the instrument.",
        Timed);

    [Fact]
    public void A_total_of_a_date_that_is_not_over_asks_for_the_rest()
    {
        Says(
            "Gauge yard, read by hand: 3.0 mm is the total of today. It counts in place of station mast, which has 1.0 mm for that time: what a person read goes before the instrument. "
            + "That date is not over: log its total again if more falls.",
            Total);
        Assert.DoesNotContain("not over", HandRainWords.Line(Total, Midnight.AddDays(1), Words).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_an_instrument_there_is_nothing_that_it_counts_before() => Says(
        "Gauge yard, read by hand: 9.0 mm from 20:30 yesterday (its last entry) to 04:00 today, booked as rain of yesterday, when that time begins.",
        Timed with { Station = "", InstrumentMm = null, From = Midnight.AddHours(-3.5) });

    [Fact]
    public void Silent_and_partly_silent_instruments_are_named()
    {
        Assert.Contains(". It counts: station mast knows nothing of that time.", HandRainWords.Line(Timed with { InstrumentMm = null }, AsOf, Words).ToString(), StringComparison.Ordinal);
        Assert.Contains("which has 7.5 mm for that time (14 h of it unknown):", HandRainWords.Line(Timed with { InstrumentMissing = TimeSpan.FromHours(14) }, AsOf, Words).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_not_counted_and_what_would_count_twice_is_said()
    {
        Assert.EndsWith("It is not counted: that date's total by hand counts instead.", HandRainWords.Line(Timed with { Counts = false }, AsOf, Words).ToString(), StringComparison.Ordinal);
        Assert.EndsWith(
            "Its hours after midnight are in the total of today too: if it rained in them that counts twice, so take one of the two back (`log void`).",
            HandRainWords.Line(Timed with { InTotalOf = Today }, AsOf, Words).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_figure_names_its_source_where_that_is_not_the_instrument_alone()
    {
        var rain = new OvernightRain("yard", 9, 3) { ByHand = [Timed, Total] };
        Assert.Equal(" (partly by hand)", HandRainWords.Source(rain, Today.AddDays(-1)).ToString());
        Assert.Equal(" (by hand)", HandRainWords.Source(rain, Today).ToString());
        Assert.Equal("", HandRainWords.Source(rain, Today.AddDays(-2)).ToString());
        Assert.Equal("", HandRainWords.Source(new("yard", 9, 3) { ByHand = [Timed with { Counts = false }] }, Today.AddDays(-1)).ToString());
        Assert.Equal(" (by hand)", HandRainWords.Source(new("yard", 9, 3) { ByHand = [Timed with { Station = "" }] }, Today.AddDays(-1)).ToString());
    }

    private static void Says(string expected, HandRain rain) => Assert.Equal(expected, HandRainWords.Line(rain, AsOf, Words).ToString());
}
