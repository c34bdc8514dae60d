using DailyAdjust.Core.Logbook;
using DailyAdjust.Tests.Irrigation;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>Grow-ins against hand reckoning.</summary>
public class GrowInTests
{
    private static readonly DateOnly Monday = SmallCourse.Monday;
    private static readonly Place Program = new(PlaceKind.Program, "C1", "P1");

    [Theory]
    [InlineData(0, 6, 4)] // as entered: 24 minutes a day
    [InlineData(1, 5, 7)] // a quarter of the way from 6 starts to 1, and from 24 minutes to 60: 33 in 5
    [InlineData(2, 4, 11)] // half way: 42 in 4, halves up
    [InlineData(3, 2, 26)] // 51 in 2
    public void It_tapers_evenly_to_the_programs_own(int day, int starts, double minutes)
    {
        var line = Assert.Single((Course with { Date = Monday.AddDays(day) }).Sheet().Exceptions.GrowIns);
        Assert.Equal((starts, minutes, day > 0), (line.Starts.Count, line.Minutes[0].Minutes, line.IsChange));
        Assert.Equal(starts == 5 ? ["07:00", "09:24", "11:48", "14:12", "16:36"] : line.Starts.Select(Text), line.Starts.Select(Text));
    }

    [Fact]
    public void A_correction_at_the_same_time_takes_its_place()
    {
        var entry = GrowIn(Monday, new(4, 0));
        var line = Assert.Single((Course with { Log = [entry, entry with { Ordinal = 1, Times = 3, Value = 5 }] }).Sheet().Exceptions.GrowIns, g => g.Starts.Count == 3);
        Assert.Equal(5, line.Minutes[0].Minutes);
    }

    [Fact]
    public void The_morning_after_its_last_date_hands_it_back()
    {
        var sheet = (Course with { Date = Monday.AddDays(4) }).Sheet();
        Assert.True(Assert.Single(sheet.Exceptions.GrowIns).IsOver);
        Assert.Equal(AdviceKind.Set, sheet.Programs[0].Advice);
        Assert.Empty((Course with { Date = Monday.AddDays(5) }).Sheet().Exceptions.GrowIns);
    }

    [Theory]
    [InlineData(100, 4, 22 / 6.0)] // 6 starts of 4 min; then 3 of 4 before the round and 2 of 5 (25.5 min in 5 starts) after it; 10 mm an hour
    [InlineData(50, 2, 2)] // 6 starts of 2 min; then 3 of 2 and 2 of 2.5, which run 3
    public void The_balance_books_what_was_keyed_at_the_programs_percentage(double percent, double firstMm, double secondMm)
    {
        LogEntry[] log =
        [
            OneZone.Entry(0, new(0, 30), LogKind.Setting, percent, LogUnit.Percent) with { Where = Program },
            GrowIn(OneZone.First, new(1, 0)),
        ];
        var days = OneZone.Run(OneZone.Site(OneZone.Area, controller: OneZone.EveryNight), [OneZone.Day(0, 0), OneZone.Day(1, 0)], 40, log);
        Assert.Equal(firstMm, days[0].IrrigationMm, 9);
        Assert.Equal(secondMm, days[1].IrrigationMm, 9);
    }

    [Fact]
    public void A_program_that_was_off_when_it_was_ordered_is_turned_on_and_one_that_was_turned_off_since_is_not()
    {
        LogEntry off = new() { Time = new(Monday.AddDays(-1), new(9, 0)), Kind = LogKind.Off, Where = Program };
        var advice = (Course with { Log = [off, .. Course.Log] }).Advice();
        Assert.Equal((AdviceKind.Resume, 100d), (advice.Advice, advice.Percent!.Value));
        Assert.Equal(AdviceKind.KeepOff, (Course with { Date = Monday.AddDays(1), Log = [.. Course.Log, off with { Time = new(Monday, new(15, 0)) }] }).Advice().Advice);
    }

    [Fact]
    public void An_order_takes_out_its_starts()
    {
        LogEntry evening = new() { Time = new(Monday, new(0, 0)), Kind = LogKind.NoWater, Where = Program, Until = new(Monday, new(15, 30)) };
        var advice = (Course with { Log = [.. Course.Log, evening] }).Advice();
        Assert.Equal(AdviceKind.Leave, advice.Advice);
        Assert.Equal([13, 15], advice.TakenOut.Select(t => t.At.Hour)); // of 07, 09, 11, 13, 15 and 17: the round is done by 13:00
    }

    private static SmallCourse Course => SmallCourse.OneStation(60) with { Log = [GrowIn(Monday, new(4, 0))] };

    private static LogEntry GrowIn(DateOnly first, TimeOnly at) => new()
    {
        Time = new(first, at),
        Kind = LogKind.GrowIn,
        Where = Program,
        Times = 6,
        Value = 4,
        Unit = LogUnit.Minutes,
        Until = new(first.AddDays(3), null),
    };

    private static string Text(TimeOnly time) => time.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture);
}
