using DailyAdjust.Core.Quantities;
using DailyAdjust.Tests.Published;
using Xunit;

namespace DailyAdjust.Tests.Irrigation;

/// <summary>[TR55] table 2-1: the runoff of a day's rain by curve number; inches as printed, within half the last digit.</summary>
public class PublishedRunoffTests
{
    private static readonly double[] CurveNumbers = [40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95, 98];

    [Fact]
    public void Runoff_by_curve_number()
    {
        var rows = PublishedTable.Rows("root-zone", "tr55-runoff.csv");
        Assert.Equal(11, rows.Count);
        foreach (var row in rows)
        {
            var rain = PublishedTable.Number(row[0]);
            for (var i = 0; i < CurveNumbers.Length; i++)
            {
                var soil = OneZone.Area.Soil with { CurveNumber = CurveNumbers[i] };
                var day = OneZone.Run(OneZone.Site(OneZone.Area with { Soil = soil }), [OneZone.Day(0, 0, rain * Depth.MmPerInch)])[0];
                var inches = day.RunoffMm / Depth.MmPerInch;
                Assert.True(Math.Abs(inches - PublishedTable.Number(row[1 + i])) <= 0.005 + 1e-9, $"{rain} in, CN {CurveNumbers[i]}: printed {row[1 + i]}, got {inches}");
            }
        }
    }

    [Fact]
    public void Without_a_curve_number_nothing_runs_off()
    {
        var day = OneZone.Run(OneZone.Site(OneZone.Area), [OneZone.Day(0, 0, 300)], 40)[0];
        Assert.Equal(0, day.RunoffMm);
        Assert.Equal(260, day.DrainageMm, 9);
    }
}
