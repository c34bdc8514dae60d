using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>Rules of the trade about the meter on a green and about rain; where each comes from stands beside it.</summary>
public class TradeMoistureTests
{
    /// <summary>
    /// A meter read after heavy rain (field capacity) says 20 %, at first wilt 5 %; keep it between 7 and 17 %: Golf Course Management, July 2019.
    /// In half a metre: TAW 75 mm, allowable depletion 65 mm (20 - 7 %), of which 15 mm (20 - 17 %) stay empty.
    /// </summary>
    private static readonly Area Green = SmallCourse.Area with
    {
        RootDepthM = 0.5,
        Soil = new Soil { Name = "sand", AvailableWaterMmPerM = 150, FieldCapacityPercent = 20 },
        AllowableDepletion = 13.0 / 15,
        LeaveEmpty = 3.0 / 13,
    };

    [Fact]
    public void Watering_brings_a_green_back_to_the_meters_upper_mark()
    {
        // 10 % before dawn: 50 mm missing, 55 by night, 15 are to be left: 40 mm at 10 mm for 100 %.
        Assert.Equal(400, Read(10).Advice().ExactPercent!.Value, 3);
    }

    [Theory]
    [InlineData(9.01, true)] // two days of 5 mm take 2 %
    [InlineData(8.99, false)]
    public void A_green_waits_while_the_meter_stays_above_its_lower_mark(double percent, bool canWait) =>
        Assert.Equal(canWait, Assert.Single(Read(percent).Advice().Zones).CanWait);

    [Theory]
    [InlineData(5)]
    [InlineData(10)]
    public void A_quarter_to_half_an_inch_of_rain_stops_the_irrigation(double depletionMm)
    {
        // 0.25 to 0.5 in: best management practices for Maryland golf courses. Two and three days of 5 mm are missing by night.
        var setting = new LogEntry { Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)), Kind = LogKind.Setting, Where = new(PlaceKind.Program, "C1", "P1"), Value = 50, Unit = LogUnit.Percent };
        var rule = (SmallCourse.OneStation(depletionMm) with { Log = [setting] }).Advice().StopRule!;
        Assert.InRange(rule.RainMm, 0.25 * Depth.MmPerInch, 0.5 * Depth.MmPerInch);
    }

    private static SmallCourse Read(double percent)
    {
        var reading = new LogEntry { Time = new(SmallCourse.Monday, new(4, 0)), Kind = LogKind.Probe, Where = new(PlaceKind.Station, "C1", "1"), Value = percent, Unit = LogUnit.Percent };
        return SmallCourse.OneStation(0, area: Green) with { Log = [reading] };
    }
}
