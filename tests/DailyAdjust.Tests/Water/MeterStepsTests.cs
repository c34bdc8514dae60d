using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Water;
using Xunit;

namespace DailyAdjust.Tests.Water;

/// <summary>Running totals of two boxes' meters, read on different days.</summary>
public class MeterStepsTests
{
    private static readonly DateOnly First = new(2026, 7, 1);

    [Fact]
    public void Steps_come_in_the_order_of_the_readings_that_end_them_whichever_meter_was_named_first()
    {
        LogEntry[] log = [Read("C1", 1, 1000), Read("C2", 2, 500), Read("C1", 9, 1900), Read("C2", 5, 650), Read("C2", 8, 640)];
        Assert.Equal(
            [(5, 150), (8, -10), (9, 900)],
            Meters.Steps(log, First, First.AddDays(9)).Select(s => (s.To.Day, (int)s.Litres)));

        // A total that fell is no water.
        Assert.Equal(900 + 140, Meters.Between(log, First, First.AddDays(9))!.Litres);
    }

    private static LogEntry Read(string box, int day, double litres) => new()
    {
        Time = new(First.AddDays(day - 1), new(7, 0)),
        Kind = LogKind.Meter,
        Where = new(PlaceKind.Controller, box, ""),
        Value = litres,
        Unit = LogUnit.Litres,
    };
}
