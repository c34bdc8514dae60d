using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Published;
using Xunit;

namespace DailyAdjust.Tests.Irrigation;

/// <summary>
/// The six virtual zones of the trade's controller test (Published/root-zone/six-zones.csv; from memory, see there):
/// working storage, and direct runoff beyond the longest cycle.
/// </summary>
public class PublishedSixZonesTests
{
    [Fact]
    public void Working_storage_is_root_depth_times_available_water_times_allowable_depletion()
    {
        foreach (var row in PublishedTable.Rows("root-zone", "six-zones.csv"))
        {
            var day = OneZone.Run(OneZone.Site(Ground(row), Rate(row)), [OneZone.Day(0, 0)])[0];

            // Printed to 0.05 in.
            Assert.True(Math.Abs((day.RawMm / Depth.MmPerInch) - PublishedTable.Number(row[7])) <= 0.025, $"zone {row[0]}: {day.RawMm / 25.4}");
        }
    }

    [Fact]
    public void Beyond_the_longest_cycle_water_counts_at_the_intake_rate()
    {
        var limited = 0;
        foreach (var row in PublishedTable.Rows("root-zone", "six-zones.csv"))
        {
            var rate = PublishedTable.Number(row[10]);
            var intake = PublishedTable.Number(row[13]);
            var storage = PublishedTable.Number(row[14]);
            var efficiency = PublishedTable.Number(row[11]) / 100;
            const double minutes = 60;

            // Longest cycle: 60 × allowable surface accumulation / (precipitation rate - intake rate), minutes.
            var longest = rate > intake ? 60 * storage / (rate - intake) : double.PositiveInfinity;
            var enters = ((Math.Min(minutes, longest) * rate) + (Math.Max(0, minutes - longest) * intake)) / 60;
            limited += longest < minutes ? 1 : 0;

            var log = new[] { OneZone.Entry(0, new(3, 0), LogKind.Run, minutes, LogUnit.Minutes) };
            var day = OneZone.Run(OneZone.Site(Ground(row), Rate(row)), [OneZone.Day(0, 0)], 20, log)[0];
            Assert.Equal(enters * efficiency * Depth.MmPerInch, day.IrrigationMm, 9);
        }

        Assert.Equal(5, limited);
    }

    private static double Rate(IReadOnlyList<string> row) => PublishedTable.Number(row[10]) * Depth.MmPerInch;

    private static Area Ground(IReadOnlyList<string> row) => OneZone.Area with
    {
        RootDepthM = PublishedTable.Number(row[4]) * Depth.MmPerInch / 1000,
        AllowableDepletion = PublishedTable.Number(row[6]) / 100,
        Efficiency = PublishedTable.Number(row[11]) / 100,
        Soil = OneZone.Area.Soil with
        {
            AvailableWaterMmPerM = PublishedTable.Number(row[5]) * 1000,
            IntakeRate = new ApplicationRate(PublishedTable.Number(row[13]) * Depth.MmPerInch),
            SurfaceStorage = new Depth(PublishedTable.Number(row[14]) * Depth.MmPerInch),
        },
    };
}
