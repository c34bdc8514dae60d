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
    public void What_differs_from_a_date_on_needs_to_be_run_from_there_alone()
    {
        var changed = 0;
        for (var seed = 1; seed <= Sites; seed++)
        {
            var before = RandomCase.Of(seed).Balance;
            var from = before.Weather[before.Weather.Count / 2].Date;
            var program = SiteVersions.On(before.Versions, from).Controllers[0] is var c ? new Place(PlaceKind.Program, c.Id, c.Programs[0].Id) : default;
            var after = before with { Log = [.. before.Log, new LogEntry { Time = new LogTime(from, new TimeOnly(0, 0)), Kind = LogKind.Setting, Where = program, Value = seed % 2 == 0 ? 0 : 130, Unit = LogUnit.Percent }] };
            var known = Balance.Run(before);
            var whole = Balance.Run(after);
            var fromThere = Balance.RunFrom(after, known, from);
            Assert.Equal(whole.Days, fromThere.Days);
            Assert.Equal(whole.Litres, fromThere.Litres);
            Assert.Equal(whole.End.DepletionMm.OrderBy(d => d.Key.ToString(), StringComparer.Ordinal), fromThere.End.DepletionMm.OrderBy(d => d.Key.ToString(), StringComparer.Ordinal));
            changed += whole.Days.SequenceEqual(known.Days) ? 0 : 1;
        }

        Assert.InRange(changed, Sites / 4, Sites);
    }

    [Fact]
    public void Days_that_are_not_listed_are_run_all_the_same()
    {
        for (var seed = 1; seed <= Sites; seed++)
        {
            var all = RandomCase.Of(seed).Balance;
            var from = all.Weather[all.Weather.Count / 2].Date;
            var (whole, listed) = (Balance.Run(all), Balance.Run(all with { ListFrom = from }));
            Assert.Equal(whole.Days.Where(d => d.Date >= from), listed.Days);
            Assert.Equal(whole.Litres, listed.Litres);
            var flow = all.Weather.Select(w => whole.Days.Where(d => d.Date == w.Date).Sum(d => d.MinutesRun * (SiteVersions.On(all.Versions, w.Date).Stations.First(s => s.Key == d.Station).FlowLPerMin ?? 0)));
            Assert.Equal(flow, whole.Litres);
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
