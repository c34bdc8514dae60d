using DailyAdjust.Core.Logbook;
using Xunit;

namespace DailyAdjust.Tests.Irrigation;

/// <summary>`ran` entries that overlap. The program gives 5 mm at 02:00 of each day.</summary>
public class DidItRunTests
{
    private static readonly Place Program = new(PlaceKind.Program, "C1", "P1");
    private static readonly Place Box = new(PlaceKind.Controller, "C1", "");

    [Fact]
    public void Station_over_program_over_controller()
    {
        Assert.Equal(4, Ran((Box, 0, "05:00", 0), (Program, 0, "05:00", 50), (OneZone.Here, 0, "05:00", 80)), 9);
        Assert.Equal(2.5, Ran((Box, 0, "05:00", 0), (Program, 0, "05:00", 50)), 9);
        Assert.Equal(4, Ran((OneZone.Here, 0, "05:00", 80), (Box, 0, "06:00", 0)), 9); // even where the controller's comes later
    }

    [Fact]
    public void Of_equals_the_latest_time_wins_in_whatever_order_they_came()
    {
        Assert.Equal(1, Ran((Program, 0, "05:00", 50), (Program, 0, "06:00", 20)), 9);
        Assert.Equal(1, Ran((Program, 0, "06:00", 20), (Program, 0, "05:00", 50)), 9);
    }

    [Theory]
    [InlineData(0, "02:00", 0)] // the start's own instant is covered
    [InlineData(0, "01:59", 5)] // the start comes after it
    [InlineData(1, "01:59", 0)] // 23 h 59 min after it
    [InlineData(1, "02:00", 5)] // exactly 24 hours after it: no longer
    [InlineData(0, null, 0)] // a bare date: that date's starts
    [InlineData(1, null, 5)]
    public void It_covers_the_24_hours_up_to_its_time(int day, string? time, double irrigated) =>
        Assert.Equal(irrigated, Ran((Program, day, time, 0)), 9);

    /// <summary>Irrigation of the first day, mm.</summary>
    private static double Ran(params (Place Where, int Day, string? Time, double Percent)[] entries)
    {
        var site = OneZone.Site(OneZone.Area, controller: OneZone.EveryNight);
        var log = entries.Select((e, i) => OneZone.Entry(e.Day, e.Time is null ? null : TimeOnly.ParseExact(e.Time, "HH:mm", null), LogKind.Ran, e.Percent, LogUnit.Percent) with { Where = e.Where, Ordinal = i }).ToList();
        return OneZone.Run(site, [OneZone.Day(0, 5), OneZone.Day(1, 5)], depletionMm: 40, log)[0].IrrigationMm;
    }
}
