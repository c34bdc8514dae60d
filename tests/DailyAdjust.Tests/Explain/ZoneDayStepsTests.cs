using DailyAdjust.Core.Explain;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Irrigation;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Explain;

public class ZoneDayStepsTests
{
    [Fact]
    public void Every_station_s_days_reckoned_from_the_printed_numbers_end_at_the_balance()
    {
        var site = ExampleSite.Build();
        var all = Inputs(site, int.MaxValue);
        var days = Balance.Run(all).Days;
        var checkedLines = 0;
        foreach (var day in days)
        {
            var sections = ZoneDaySteps.Of(Inputs(site, day.Date.DayNumber - site.Start.DayNumber + 1), day.Station);
            Assert.Equal(5, sections.Count);
            Assert.Equal(day.DepletionMm, sections[4].Steps[^1].Value!.Value);
            Assert.Equal(day.DepletionMm, sections[3].Steps[^1].Value!.Value, 1e-9);
            checkedLines += Reckoned.Lines(sections);
        }

        Assert.True(checkedLines > 10 * days.Count, $"{checkedLines} lines of {days.Count} days");
    }

    [Theory]
    [InlineData(0.7, null, 0.82, "site description, area")]
    [InlineData(0.7, 0.55, 0.73, "site description, this station")]
    public void Efficiency_stands_before_the_first_watering_that_takes_it_and_from_uniformity_with_its_equation(double ofArea, double? own, double efficiency, string source)
    {
        var area = OneZone.Area with { DistributionUniformity = ofArea, Efficiency = Uniformity.Efficiency(ofArea) };
        var steps = Watering(area, own);
        var at = steps.FindIndex(s => s.Symbol is "eff");
        Assert.Equal(("0.4 + 0.6 * DU", "landscape irrigation handbooks, from memory"), (steps[at].Formula, steps[at].Source));
        Assert.Equal(efficiency, steps[at].Value!.Value, 1e-12);
        Assert.Equal(("DU", source), (steps[at - 1].Symbol, steps[at - 1].Source));
        Assert.Contains(steps[(at + 1)..], s => s.Inputs.Any(i => i.Symbol is "eff" && i.Value == steps[at].Value));

        var given = Watering(OneZone.Area, null);
        Assert.DoesNotContain(given, s => s.Symbol is "DU");
        Assert.Equal((1, "", "site description, area"), (given[0].Value, given[0].Formula, given[0].Source));
    }

    private static List<Step> Watering(Area area, double? own)
    {
        var site = OneZone.Site(area, controller: OneZone.EveryNight);
        site = site with { Stations = [site.Stations[0] with { DistributionUniformity = own }] };
        var sections = ZoneDaySteps.Of(new BalanceInputs { Versions = [new SiteVersion(OneZone.First, site)], Weather = [OneZone.Day(0, 5)], Log = [] }, OneZone.Key);
        Reckoned.Lines(sections);
        return [.. sections.Single(s => s.Title is "Watering").Steps];
    }

    [Fact]
    public void The_published_worked_day_reads_through_the_same_steps()
    {
        // [FAO56] example 18, p. 72-73 (Uccle, 6 July): inputs and intermediate values as printed there.
        var air = new DailyAir
        {
            AirTemperatureMaxC = 21.5,
            AirTemperatureMinC = 12.3,
            VapourPressureKPa = Atmosphere.VapourPressureFromExtremesKPa(21.5, 12.3, 84, 63),
            WindSpeed2mMPerS = Atmosphere.WindSpeed2mMPerS(2.7777777777777777, 10),
            SolarRadiationMJPerM2Day = Radiation.SolarFromSunshineMJPerM2(9.25, Sun.DaylightHours(50.8, 187), Sun.ExtraterrestrialRadiationMJPerM2Day(50.8, 187)),
            ExtraterrestrialRadiationMJPerM2Day = Sun.ExtraterrestrialRadiationMJPerM2Day(50.8, 187),
            ElevationM = 100,
        };
        List<Step> steps = [.. DailySteps.Of(air, 50.8, 187)];
        Reckoned.Lines([new Section("", steps)]);
        (string Symbol, double Value, double Tolerance)[] published =
        [
            ("T", 16.9, 0.05), ("P", 100.1, 0.05), ("gamma", 0.0666, 0.0005), ("Delta", 0.122, 0.0005), ("ea", 1.409, 0.002), ("u2", 2.078, 0.001), ("Ra", 41.09, 0.02),
            ("Rns", 17.0, 0.05), ("Rnl", 3.71, 0.01), ("Rn", 13.28, 0.01), ("ETo", 3.88, 0.005),
        ];
        Assert.All(published, p => Assert.Equal(p.Value, steps.Last(s => s.Symbol.Is(p.Symbol)).Value!.Value, p.Tolerance));
    }

    [Theory]
    [InlineData(28, 90, 1.9, 0, -0.1, 0.0)] // [FAO56] example 19, p. 75-76: 02-03 h, net radiation
    [InlineData(38, 52, 3.3, 2.45, 1.749, double.NaN)] // [FAO56] example 19, p. 75-76: 14-15 h; its ETo stands on Cd 0.34, ours on 0.24
    public void The_published_worked_hours_read_through_the_same_steps(double t, double humidity, double wind, double solar, double net, double eto)
    {
        // Of the two hours the cloud factor is that of Rs/Rso 0.8 by night and 0.922 by day, as the example has it.
        var air = new HourlyAir
        {
            AirTemperatureC = t,
            VapourPressureKPa = Atmosphere.VapourPressureKPa(t, humidity),
            WindSpeed2mMPerS = wind,
            SolarRadiationMJPerM2 = solar,
            CloudFactor = Radiation.CloudFactor(solar > 0 ? 0.922 : 0.8),
            ElevationM = 8,
        };
        List<Step> steps = [.. HourSteps.Of(air)];
        Reckoned.Lines([new Section("", steps)]);
        Assert.Equal(net, steps.First(s => s.Symbol.Is("Rn")).Value!.Value, 0.003);
        Assert.Equal(ReferenceEtHourly.EtoMm(air), steps[^1].Value!.Value);
        if (!double.IsNaN(eto))
        {
            Assert.Equal(eto, steps[^1].Value!.Value, 0.01);
        }
    }

    private static BalanceInputs Inputs(Site site, int days) => new()
    {
        Versions = [new SiteVersion(site.Start, site)],
        Weather = [.. ExampleInputs.Weather().Take(days)],
        Log = ExampleInputs.Log(),
    };
}
