using DailyAdjust.Core.Irrigation;
using Xunit;

namespace DailyAdjust.Tests.Plain;

/// <summary>The plain balance keeps its own books before anything is held against it.</summary>
public class PlainBalanceProperties
{
    private const int Sites = 200;

    [Fact]
    public void Water_is_conserved_and_depletion_stays_within_the_root_zone()
    {
        for (var seed = 1; seed <= Sites; seed++)
        {
            foreach (var d in PlainBalance.Run(RandomCase.Of(seed).Balance))
            {
                var change = d.EtcMm - ((d.RainMm ?? 0) - d.InterceptedMm - d.RunoffMm) - d.IrrigationMm - d.HoseMm + d.DrainageMm + d.ProbeMm;
                Assert.True(Math.Abs(d.DepletionMm - d.DepletionBeforeMm - change) <= 1e-9, $"seed {seed} {d}");
                Assert.InRange(d.DepletionMm, 0, d.TawMm);
            }
        }
    }

    [Fact]
    public void Day_by_day_is_the_same_as_all_at_once()
    {
        for (var seed = 1; seed <= Sites; seed++)
        {
            var all = RandomCase.Of(seed).Balance;
            var atOnce = PlainBalance.Run(all);
            var dayByDay = new List<PlainZoneDay>();
            SoilState? state = null;
            foreach (var day in all.Weather)
            {
                var one = PlainBalance.Run(all with { Weather = [day], StartState = state });
                dayByDay.AddRange(one);
                state = new(day.Date.AddDays(1), one.ToDictionary(d => d.Station, d => d.DepletionMm));
            }

            Assert.Equal(atOnce, dayByDay);
        }
    }

    [Fact]
    public void The_random_sites_reach_every_corner_of_the_balance()
    {
        var cases = Enumerable.Range(1, Sites).Select(RandomCase.Of).ToList();
        var days = cases.SelectMany(c => PlainBalance.Run(c.Balance)).ToList();
        Assert.Contains(days, d => d.InterceptedMm > 0);
        Assert.Contains(days, d => d.RunoffMm > 0);
        Assert.Contains(days, d => d.ProbeMm != 0);
        Assert.Contains(days, d => d.HoseMm > 0);
        Assert.Contains(days, d => d.DrainageMm > 0);
        Assert.Contains(days, d => d.Ks < 0.9);
        Assert.Contains(days, d => d.RainMm is null);
        Assert.Contains(cases, c => c.Versions.Count > 1);
        Assert.Contains(cases, c => c.Weather.Any(w => c.Site.Clock.DayEnd(w.Date) - c.Site.Clock.DayStart(w.Date) == TimeSpan.FromHours(23)));
        Assert.Contains(cases, c => c.Weather.Any(w => c.Site.Clock.DayEnd(w.Date) - c.Site.Clock.DayStart(w.Date) == TimeSpan.FromHours(25)));
        Assert.Contains(cases, c => c.Site.Controllers.Any(b => b.ClockStaysStandard));
    }
}
