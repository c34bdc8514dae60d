using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Replay;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Replay;

/// <summary>The replay's own bookkeeping is that of the balance: the fixed program is a balance with an empty logbook.</summary>
public class ReplayAgreesWithBalanceTests
{
    [Fact]
    public void On_the_six_zones()
    {
        foreach (var (site, weather) in SixZones.Places)
        {
            Agrees(site with { Start = new DateOnly(2013, 4, 1) }, weather, new DateOnly(2013, 9, 30));
        }
    }

    [Fact]
    public void On_the_example_site_with_rain_by_the_hour()
    {
        var site = ExampleSite.Build();
        Agrees(site, ExampleInputs.Weather(), ExampleInputs.Last);
    }

    [Fact]
    public void On_made_up_sites_of_all_sorts()
    {
        for (var seed = 1; seed <= 60; seed++)
        {
            var random = RandomCase.Of(seed);
            Agrees(random.Site, random.Weather, random.Weather[^1].Date);
        }
    }

    private static void Agrees(Site site, IReadOnlyList<WeatherDay> weather, DateOnly last)
    {
        var days = Balance.Run(new BalanceInputs
        {
            Versions = [new SiteVersion(site.Start, site)],
            Weather = [.. weather.Where(w => w.Date >= site.Start && w.Date <= last)],
            Log = [],
        }).Days.ToLookup(d => d.Station);
        var replay = ReplayCalculation.Run(new ReplayInputs { Site = site, Weather = weather, From = site.Start, To = last }).Of(ReplayPolicy.Fixed);
        Assert.Equal(site.Stations.Count, replay.Stations.Count);
        foreach (var station in replay.Stations)
        {
            var zone = days[station.Station.Key].ToList();
            var figures = station.Figures;
            Assert.Equal(zone.Sum(d => d.EtcMm), figures.EtcMm, 1e-6);
            Assert.Equal(zone.Sum(d => d.IrrigationMm), figures.NetMm, 1e-6);
            Assert.Equal(zone.Sum(d => d.DrainageMm), figures.DrainageMm, 1e-6);
            Assert.Equal(zone.Sum(d => d.RunoffMm), figures.RainRunoffMm, 1e-6);
            Assert.Equal(zone.Sum(d => d.IrrigationRunoffMm), figures.RunoffMm * station.Station.Efficiency, 1e-6);
            Assert.Equal(zone.Sum(d => d.MinutesRun) / 60 * station.Station.Rate.MmPerHour, figures.WaterMm, 1e-6);
            Assert.True(figures.StressDays >= zone.Count(d => d.DepletionMm > d.RawMm + 1e-6), station.Station.Key.ToString());
        }
    }
}
