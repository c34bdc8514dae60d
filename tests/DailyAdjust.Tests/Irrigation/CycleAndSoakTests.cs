using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Files.Sites;
using DailyAdjust.Tests.Advice;
using DailyAdjust.Tests.Published;
using Xunit;

namespace DailyAdjust.Tests.Irrigation;

/// <summary>Runs longer than the ground takes at once.</summary>
public class CycleAndSoakTests
{
    private const double PerInch = Depth.MmPerInch;

    [Fact]
    public void A_run_is_split_so_that_each_cycle_stays_below_runoff()
    {
        // 1.60 in/h on loam that takes 0.35 in/h and holds 0.25 in on top (zone 1 of Published/root-zone/six-zones.csv, from memory):
        // 60 x 0.25 / 1.25 = 12 minutes at once; 60 x 0.25 / 0.35 = 42.9 minutes to take it in.
        var split = CycleAndSoak.Of(Ground(1.60, 0.35, 0.25), 40)!;
        Assert.Equal((4, 10d), (split.Cycles, split.MinutesEach));
        Assert.Equal(42.857, split.SoakMinutes, 3);
        Assert.Equal(3, CycleAndSoak.Of(Ground(1.60, 0.35, 0.25), 36)!.Cycles);
        Assert.Null(CycleAndSoak.Of(Ground(1.60, 0.35, 0.25), 12));
    }

    [Fact]
    public void Split_so_nothing_runs_off()
    {
        var station = Ground(1.60, 0.35, 0.25);
        var net = new NetIrrigation(station);
        for (var minutes = 1.0; minutes < 200; minutes += 7)
        {
            var (cycles, each) = CycleAndSoak.Of(station, minutes) is { } split ? (split.Cycles, split.MinutesEach) : (1, minutes);
            Assert.Equal(0, net.RunoffMm(each), 9);
            Assert.Equal(minutes, cycles * each, 9);
            Assert.True(cycles == 1 || net.RunoffMm(minutes / (cycles - 1)) > 0, $"{minutes} min in {cycles}");
        }
    }

    [Fact]
    public void Slow_heads_and_ground_without_a_limit_need_no_split()
    {
        Assert.Null(CycleAndSoak.Of(Ground(0.20, 0.35, 0.25), 600));
        Assert.Null(CycleAndSoak.Of(Ground(1.60, 0.35, 0), 600));
        Assert.Null(CycleAndSoak.Of(SmallCourse.Station(1), 600));
    }

    [Fact]
    public void The_sheet_says_how_many_starts_and_how_far_apart()
    {
        var area = SmallCourse.Area with { Soil = SmallCourse.Area.Soil with { IntakeRate = new ApplicationRate(5), SurfaceStorage = new Depth(2) } };
        var advice = SmallCourse.OneStation(5, area).Advice();

        // 10 mm an hour on ground that takes 5 and holds 2: 24 minutes at once, 24 to take it in.
        var run = Assert.Single(advice.LongRuns);
        Assert.Equal((60d, 3, 20d, 24d), (run.Minutes, run.Split.Cycles, run.Split.MinutesEach, Math.Round(run.Split.SoakMinutes, 9)));
        Assert.Contains(advice.Chain, r => r.Code is "cycles" && r.Words.ToString().Contains("in place of each start key in 3, 44 min from the beginning of one to that of the next, each with 1/3 of the base minutes (the longest then runs 20 min at 100 %)", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(new[] { "22:00" }, 3, null)]
    [InlineData(new[] { "20:00", "22:12" }, 3, null)]
    [InlineData(new[] { "20:00", "22:11" }, 2, 131.0)]
    [InlineData(new[] { "22:00", "23:00" }, 1, 60.0)]
    public void As_many_starts_are_proposed_as_end_and_soak_in_before_the_programs_own_next_one(string[] starts, int fit, double? next)
    {
        // 60 minutes at 10 mm an hour on ground that takes 5 and holds 2: 3 of 20 min with 24 between, so 44 from one to the next, 132 in all.
        var area = SmallCourse.Area with { Soil = SmallCourse.Area.Soil with { IntakeRate = new ApplicationRate(5), SurfaceStorage = new Depth(2) } };
        var course = SmallCourse.OneStation(5, area);
        var advice = (course with { Controller = SmallCourse.Box with { PercentMin = 100, PercentMax = 100, Programs = [SmallCourse.EveryNight("P1", starts)] } }).Advice();
        Assert.Equal(new StartsInPlace(3, 44, fit, next), advice.InPlace);
        Assert.Equal(next is not null, advice.Chain.Any(r => r.Code is "cycles" && r.Words.ToString().Contains("but its own next start comes after", StringComparison.Ordinal)));
    }

    [Fact]
    public void The_table_by_slope_is_the_handbooks()
    {
        // Published/root-zone/soils.csv: intake rates and the first column seen second-hand, the other columns from memory.
        double[] slopes = [2, 5, 9, 20];
        var held = 0;
        foreach (var row in PublishedTable.Rows("root-zone", "soils.csv").Where(r => r[4].Length > 0))
        {
            for (var i = 0; i < slopes.Length; i++)
            {
                var (intake, storage) = SurfaceTable.Find(row[0], slopes[i])!.Value;
                Assert.Equal(PublishedTable.Number(row[4]) * PerInch, intake, 9);
                Assert.Equal(PublishedTable.Number(row[5 + i]) * PerInch, storage, 9);
                held++;
            }
        }

        Assert.Equal(SurfaceTable.Textures.Count * 4, held);
        Assert.Null(SurfaceTable.Find("silt loam", 2));
    }

    [Fact]
    public void The_virtual_zones_agree_with_the_table()
    {
        foreach (var row in PublishedTable.Rows("root-zone", "six-zones.csv"))
        {
            Assert.Equal(PublishedTable.Number(row[14]) * PerInch, SurfaceTable.Find(row[1], PublishedTable.Number(row[2]))!.Value.StorageMm, 9);
        }
    }

    private static Core.Sites.Station Ground(double rateInPerHour, double intakeInPerHour, double storageIn) => SmallCourse.Station(1) with
    {
        Rate = new ApplicationRate(rateInPerHour * PerInch),
        Area = SmallCourse.Area with { Soil = SmallCourse.Area.Soil with { IntakeRate = new ApplicationRate(intakeInPerHour * PerInch), SurfaceStorage = new Depth(storageIn * PerInch) } },
    };
}
