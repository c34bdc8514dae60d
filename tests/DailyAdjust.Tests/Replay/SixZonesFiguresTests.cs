using DailyAdjust.Core.Replay;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Replay;

/// <summary>
/// Six zones, April to September of Seattle and New York 2012-2015: eight seasons, a dial step of 5 %, advice of the morning before. The limits are
/// what the project set itself; the trade's protocol asks for an adequacy of 80 % and an excess of 5 % (Published/root-zone/six-zones.csv).
/// </summary>
public class SixZonesFiguresTests
{
    private static readonly VisitDays TwiceAWeek = new VisitDays.Weekdays([DayOfWeek.Monday, DayOfWeek.Thursday]);

    private readonly ITestOutputHelper _output;

    public SixZonesFiguresTests(ITestOutputHelper output) => _output = output;

    [Fact]
    public void With_daily_visits()
    {
        var advice = Told(SixZones.Seasons(VisitDays.Daily), ReplayPolicy.Advice);
        Assert.True(advice.LeastAdequacy >= 98, advice.ToString());
        Assert.True(advice.MeanExcess <= 5, advice.ToString());
        Assert.True(advice.WorstExcess <= 7, advice.ToString());
        Assert.True(advice.MeanChanges <= 45, advice.ToString());
    }

    [Fact]
    public void With_two_visits_a_week()
    {
        var advice = Told(SixZones.Seasons(TwiceAWeek), ReplayPolicy.Advice);
        Assert.True(advice.LeastAdequacy >= 98, advice.ToString());
        Assert.True(advice.MeanExcess <= 9, advice.ToString());
        Assert.True(advice.WorstExcess <= 12, advice.ToString());
        Assert.True(advice.MeanChanges <= 25, advice.ToString());
    }

    [Fact]
    public void With_the_true_rain_as_forecast()
    {
        var daily = Told(SixZones.Seasons(VisitDays.Daily, rainKnownAhead: true), ReplayPolicy.Advice);
        Assert.True(daily.LeastAdequacy >= 97, daily.ToString());
        Assert.True(daily.MeanExcess <= 3.5, daily.ToString());

        var twiceAWeek = Told(SixZones.Seasons(TwiceAWeek, rainKnownAhead: true), ReplayPolicy.Advice);
        Assert.True(twiceAWeek.LeastAdequacy >= 97, twiceAWeek.ToString());
        Assert.True(twiceAWeek.MeanExcess <= 8, twiceAWeek.ToString());
    }

    [Fact]
    public void With_skip_room_every_single_program_keeps_its_changes_below_the_limit_and_they_halve()
    {
        static Site Change(Site site) => site with { Report = site.Report with { SkipRoom = 0 } };
        var daily = Told(SixZones.Seasons(VisitDays.Daily, change: Change), ReplayPolicy.Advice);
        Assert.True(daily.LeastAdequacy >= 98, daily.ToString());
        Assert.True(daily.MeanExcess <= 5, daily.ToString());
        Assert.True(daily.WorstExcess <= 7, daily.ToString());
        Assert.True(daily.MostChanges <= 45, daily.ToString());
        Assert.True(daily.MeanChanges <= 20, daily.ToString());

        var twiceAWeek = Told(SixZones.Seasons(TwiceAWeek, change: Change), ReplayPolicy.Advice);
        Assert.True(twiceAWeek.LeastAdequacy >= 98, twiceAWeek.ToString());
        Assert.True(twiceAWeek.MeanExcess <= 9, twiceAWeek.ToString());
        Assert.True(twiceAWeek.WorstExcess <= 12, twiceAWeek.ToString());
        Assert.True(twiceAWeek.MeanChanges <= 15, twiceAWeek.ToString());
    }

    [Fact]
    public void What_stands_beside_it()
    {
        var seasons = SixZones.Seasons(VisitDays.Daily);
        var advice = Told(seasons, ReplayPolicy.Advice);
        var perfect = Told(seasons, ReplayPolicy.Perfect);
        Assert.True(perfect.LeastAdequacy >= 100 - 1e-6, perfect.ToString());
        Assert.True(perfect.WorstExcess <= 1e-6, perfect.ToString());
        Assert.Equal(0, perfect.StressDays);

        var refill = Told(seasons, ReplayPolicy.Refill);
        Assert.True(refill.LeastAdequacy >= 99.9, refill.ToString());
        Assert.InRange(refill.MeanExcess, 10, 20);
        Assert.True(refill.MeanChanges >= 100, refill.ToString());

        var set = Told(seasons, ReplayPolicy.Fixed);
        Assert.True(set.MeanExcess > 30, set.ToString());
        Assert.Equal(0, set.MeanChanges);
        Assert.True(perfect.WaterMm < advice.WaterMm && advice.WaterMm < refill.WaterMm && refill.WaterMm < set.WaterMm);
    }

    private Summary Told(IReadOnlyList<ReplayResult> seasons, ReplayPolicy policy)
    {
        Assert.Equal(8, seasons.Count);
        var summary = Summary.Of([.. seasons.Select(s => s.Of(policy))]);
        _output.WriteLine($"{policy}: {summary}");
        return summary;
    }

    /// <summary>Of every zone in every season.</summary>
    private sealed record Summary(double LeastAdequacy, double MeanExcess, double WorstExcess, double MeanChanges, int MostChanges, double WaterMm, double StressDays)
    {
        public static Summary Of(IReadOnlyList<PolicyResult> seasons)
        {
            var zones = seasons.SelectMany(s => s.Stations).Select(s => s.Figures).ToList();
            var programs = seasons.SelectMany(s => s.Programs).ToList();
            Assert.Equal(48, zones.Count);
            Assert.Equal(48, programs.Count);
            return new(
                zones.Min(z => z.AdequacyPercent),
                zones.Average(z => z.ExcessPercent),
                zones.Max(z => z.ExcessPercent),
                programs.Average(p => p.Changes),
                programs.Max(p => p.Changes),
                zones.Average(z => z.WaterMm),
                zones.Average(z => z.StressDays));
        }
    }
}
