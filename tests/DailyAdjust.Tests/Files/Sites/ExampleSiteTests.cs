using DailyAdjust.Core.Sites;
using DailyAdjust.Files;
using DailyAdjust.Files.Sites;
using Xunit;

namespace DailyAdjust.Tests.Files.Sites;

/// <summary>The example site loads as it stands, and every value means what its file says.</summary>
public sealed class ExampleSiteTests
{
    private static readonly SiteReading Reading = SiteReader.Read("site.yaml", ExampleSiteFiles.SiteYaml, "stations.csv", ExampleSiteFiles.StationsCsv);

    private static Site Site => Reading.Site!;

    [Fact]
    public void It_has_no_error_and_one_warning_for_each_station_of_an_hour_or_more()
    {
        Assert.NotNull(Reading.Site);
        Assert.False(Reading.Corrects);
        Assert.All(Reading.Problems, p => Assert.Equal(Severity.Warning, p.Severity));
        Assert.Equal([5, 6, 8, 14, 15, 16], Reading.Problems.Select(p => p.Line));
        Assert.Equal("stations.csv:5:5: station C1/4 runs 70 min in P1. an hour set by mistake on the dial looks like this.", Reading.Problems[0].ToString());
    }

    [Fact]
    public void The_site_and_its_report()
    {
        Assert.Equal("Tamarack Flats Municipal", Site.Name);
        Assert.Equal(44.21, Site.LatitudeDeg);
        Assert.Equal(-98.32, Site.LongitudeDeg);
        Assert.Equal(1290 * 0.3048, Site.ElevationM, 1e-9);
        Assert.Equal("America/Chicago", Site.Clock.ZoneId);
        Assert.Equal(UnitSystem.Us, Site.Units);
        Assert.Equal(new DateOnly(2026, 6, 1), Site.Start);
        Assert.Equal(StartSoil.Full, Site.StartSoil);
        Assert.Equal([new TimeOnly(5, 0)], Site.Report.At);
        Assert.Equal(new TimeOnly(13, 0), Site.Report.RoundDoneBy);
        Assert.Equal((0.80, 25.0, 0.05, TimeSpan.FromDays(2)), (Site.Report.Satisfy, Site.Report.SkipBelowPercent, Site.Report.Worth, Site.Report.WeatherMaxAge));
        Assert.Equal(new WateringWindow(new(20, 0), new(6, 30)), Site.Window);
        Assert.Equal(850 * 3.785411784, Site.PumpCapacityLPerMin!.Value, 1e-9);
    }

    [Fact]
    public void The_weather_station_and_its_gauge()
    {
        var station = Assert.Single(Site.Weather.Stations);
        Assert.Equal(("yard", "yard-*.csv", "csv"), (station.Id, station.Files, station.Format));
        Assert.Equal(new TimeColumn("Time", null, "yyyy-MM-dd HH:mm", StampClock.Local, StampMeaning.End), station.Time);
        Assert.Equal(TimeSpan.FromHours(1), station.Interval);
        Assert.Equal(["", "--"], station.Missing);
        Assert.Equal(2, station.WindHeightM);
        Assert.Equal(
            [WeatherQuantity.AirTemperature, WeatherQuantity.RelativeHumidity, WeatherQuantity.WindSpeed, WeatherQuantity.SolarRadiation, WeatherQuantity.Rain],
            station.Columns.Keys.Order());
        Assert.Equal(new MappedColumn("Solar (W/m²)", null), station.Columns[WeatherQuantity.SolarRadiation]);
        Assert.Equal([new Gauge("yard", "yard")], Site.Weather.Gauges);
        Assert.Null(Site.Weather.Normals);
    }

    [Fact]
    public void Soils_and_areas()
    {
        var sand = Site.Soils["sand-rootzone"];
        Assert.Equal(1000.0 / 12, sand.AvailableWaterMmPerM, 1e-9);
        Assert.Equal(18, sand.FieldCapacityPercent);
        Assert.Equal(0.6 * 25.4, sand.IntakeRate!.Value.MmPerHour, 1e-9);
        Assert.Equal(0.35 * 25.4, sand.SurfaceStorage.Mm, 1e-9);
        Assert.Null(sand.CurveNumber);
        Assert.Equal(69, Site.Soils["silt-loam"].CurveNumber);

        Assert.Equal(["greens", "tees", "fairways", "rough"], Site.Areas.Select(a => a.Name), StringComparer.Ordinal);
        var fairways = Site.Areas[2];
        Assert.Equal(1.04, fairways.Kc[3]);
        Assert.Equal(0.40, fairways.LeaveEmpty);
        Assert.Equal(0.4 + (0.6 * 0.65), fairways.Efficiency, 1e-12);
        Assert.Equal(0.85, fairways.Replace, 1e-12);
        Assert.Equal((0.30, 0.80, 1.0, 0.0), (Site.Areas[0].LeaveEmpty, Site.Areas[0].Efficiency, Site.Areas[0].Replace, Site.Areas[0].RunAt));
        Assert.Equal(1.0, Site.Areas[3].RunAt);

        // raw_mm and taw_mm of a green in expected-balance.csv.
        Assert.Equal(12.7, Site.Areas[0].TotalAvailableWaterMm, 1e-4);
        Assert.Equal(6.35, Site.Areas[0].AllowableDepletionMm, 1e-4);
    }

    [Fact]
    public void Controllers_and_programs()
    {
        var (first, second) = (Site.Controllers[0], Site.Controllers[1]);
        Assert.Equal(("C1", "left of the third tee", 1), (first.Id, first.Place, first.Route));
        Assert.Equal((0.0, 200.0, 5.0), (first.PercentMin, first.PercentMax, first.PercentStep));
        Assert.Equal((10.0, 150.0, 10.0), (second.PercentMin, second.PercentMax, second.PercentStep));
        Assert.Equal((1.0, MinutesRounding.Nearest, ProgramOverlap.Together, TimeSpan.Zero), (first.MinutesStep, first.Rounding, first.Overlap, first.StationGap));
        Assert.False(first.ClockStaysStandard);

        var wedFriSun = Assert.IsType<WaterDays.Weekdays>(first.Programs[0].Days);
        Assert.Equal([DayOfWeek.Wednesday, DayOfWeek.Friday, DayOfWeek.Sunday], wedFriSun.Days);
        Assert.Same(WaterDays.Every, first.Programs[1].Days);
        Assert.Equal(new WaterDays.EveryNth(3, new(2026, 6, 2)), first.Programs[2].Days);
        Assert.IsType<WaterDays.OddDays>(second.Programs[0].Days);
        Assert.Equal([new TimeOnly(3, 30), new TimeOnly(5, 20)], second.Programs[1].Starts);
        var visit = Assert.IsType<VisitDays.Weekdays>(second.Programs[1].Visit);
        Assert.Equal([DayOfWeek.Monday, DayOfWeek.Thursday], visit.Days);
        Assert.Same(VisitDays.Daily, first.Programs[0].Visit);
    }

    [Fact]
    public void Stations()
    {
        Assert.Equal(15, Site.Stations.Count);
        var shade = Site.Stations[1];
        Assert.Equal((new StationKey("C1", "2"), "green 2 (shade)", "greens", 0.85, "yard"), (shade.Key, shade.Name, shade.Area.Name, shade.Exposure, shade.Gauge));
        Assert.Equal(27, Assert.Single(shade.BaseMinutes).Value);
        Assert.Equal(0.55 * 25.4, shade.Rate.MmPerHour, 1e-9);
        Assert.Equal(RateKnown.Catalogue, shade.RateKnown);
        Assert.Equal(49 * 3.785411784, shade.FlowLPerMin!.Value, 1e-9);
        Assert.Equal(8600 * 0.09290304, shade.GroundM2!.Value, 1e-9);
    }
}
