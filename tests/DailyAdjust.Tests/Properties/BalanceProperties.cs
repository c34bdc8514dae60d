using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Irrigation;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Properties;

/// <summary>What holds of every balance.</summary>
public class BalanceProperties
{
    private const int Sites = 300;

    [Fact]
    public void Water_is_conserved_and_depletion_stays_within_the_root_zone()
    {
        for (var seed = 1; seed <= Sites; seed++)
        {
            foreach (var d in Balance.Run(RandomCase.Of(seed).Balance).Days)
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
            var dayByDay = new List<ZoneDay>();
            SoilState? state = null;
            foreach (var day in all.Weather)
            {
                var one = Balance.Run(all with { Weather = [day], StartState = state });
                dayByDay.AddRange(one.Days);
                state = one.End;
            }

            Assert.Equal(Balance.Run(all).Days, dayByDay);
        }
    }

    [Fact]
    public void A_station_that_was_taken_out_comes_back_full_whether_run_day_by_day_or_all_at_once()
    {
        var site = OneZone.Site(OneZone.Area);
        var versions = new SiteVersion[] { new(OneZone.First, site), new(OneZone.First.AddDays(2), site with { Stations = [] }), new(OneZone.First.AddDays(3), site) };
        var all = new BalanceInputs { Versions = versions, Weather = [.. Enumerable.Range(0, 4).Select(n => OneZone.Day(n, etoMm: 5))], Log = [] };
        var untilThen = Balance.Run(all with { Weather = [.. all.Weather.Take(3)] }).End;
        Assert.Equal([0, 5, 0], Balance.Run(all).Days.Select(d => d.DepletionBeforeMm));
        Assert.Equal(Balance.Run(all).Days[^1], Balance.Run(all with { Weather = [all.Weather[3]], StartState = untilThen }).Days[0]);
    }

    [Fact]
    public void More_rain_never_leaves_the_ground_drier()
    {
        var wetter = 0;
        for (var seed = 1; seed <= Sites; seed++)
        {
            var inputs = RandomCase.Of(seed).Balance;
            var more = inputs with { Weather = [.. inputs.Weather.Select(w => w with { Rain = [.. w.Rain.Select(Half)] })] };
            foreach (var (dry, wet) in Balance.Run(inputs).Days.Zip(Balance.Run(more).Days))
            {
                // Where one day can draw more than lies between allowable depletion and wilting, stress itself overshoots.
                if (dry.EtoMm * dry.K > dry.TawMm - dry.RawMm)
                {
                    continue;
                }

                Assert.True(wet.DepletionMm <= dry.DepletionMm + 1e-9, $"seed {seed} {dry.Date} {dry.Station}: {dry.DepletionMm} became {wet.DepletionMm}");
                wetter += wet.DepletionMm < dry.DepletionMm - 1e-6 ? 1 : 0;
            }
        }

        Assert.True(wetter > 1000, $"{wetter}");

        // Half as much again in every interval.
        static GaugeDay Half(GaugeDay g) => g with { RainMm = g.RainMm * 1.5, Falls = [.. g.Falls.Select(f => f with { Mm = f.Mm * 1.5 })] };
    }

    [Fact]
    public void The_order_in_which_the_logbook_was_read_does_not_matter()
    {
        for (var seed = 1; seed <= Sites; seed++)
        {
            // Of entries of the same instant the later read wins (a bare date is its end): those are left out here.
            var inputs = RandomCase.Of(seed).Balance;
            var clock = inputs.Versions[^1].Site.Clock;
            var log = inputs.Log.Where(e => e.Kind != LogKind.Round).GroupBy(e => e.Time.Instant(clock)).Where(g => g.Count() == 1).SelectMany(g => g).ToList();
            var forward = Balance.Run(inputs with { Log = log });
            var backward = Balance.Run(inputs with { Log = [.. log.AsEnumerable().Reverse()] });
            Assert.Equal(forward.Days, backward.Days);
        }
    }
}
