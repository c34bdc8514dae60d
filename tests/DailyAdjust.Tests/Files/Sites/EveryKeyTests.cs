using DailyAdjust.Core.Sites;
using DailyAdjust.Files;
using DailyAdjust.Files.Sites;
using Xunit;

namespace DailyAdjust.Tests.Files.Sites;

/// <summary>The keys that the example site does not use, and every default.</summary>
public sealed class EveryKeyTests
{
    private static readonly SiteReading Reading = SiteReader.Read("site.yaml", EveryKeyText.Yaml, "stations.csv", "\uFEFF" + EveryKeyText.Csv.ReplaceLineEndings("\r\n"));

    private static Site Site => Reading.Site ?? throw new InvalidOperationException(string.Join('\n', Reading.Problems));

    [Fact]
    public void The_table_value_of_a_texture_is_told_and_nothing_else()
    {
        Assert.True(Reading.Corrects);
        var problem = Assert.Single(Reading.Problems);
        Assert.Equal(Severity.Warning, problem.Severity);
        Assert.Equal("site.yaml:33:23: soils.push-up takes 130 mm/m available water from its texture, the middle of 110 to 150. give available_water where it is known.", problem.ToString());
        Assert.Equal(130, Site.Soils["push-up"].AvailableWaterMmPerM);
    }

    [Fact]
    public void Report_times_stand_in_order()
    {
        Assert.Equal([new TimeOnly(4, 30), new TimeOnly(11, 0)], Site.Report.At);
        Assert.Equal(TimeSpan.FromHours(36), Site.Report.WeatherMaxAge);
        Assert.Equal(0.12, Site.Report.SkipRoom!.Value, 1e-12);
        Assert.Equal(new TimeOnly(6, 45), Site.Report.FirstPlay);
        Assert.Equal(SheetLanguage.Spanish, Site.Report.Language);
        Assert.Null(Site.Window);
        Assert.Null(Site.PumpCapacityLPerMin);
    }

    [Fact]
    public void Weather_stations()
    {
        var mast = Site.Weather.Stations[0];
        Assert.Equal(new TimeColumn("Datum", "Uhr", "dd.MM.yyyy HH:mm", StampClock.Utc, StampMeaning.Start), mast.Time);
        Assert.Equal((10.0, true, ';', true, true, TimeSpan.FromMinutes(10)), (mast.WindHeightM, mast.Coastal, mast.Delimiter, mast.DecimalComma, mast.UseSuppliedEto, mast.Interval));
        Assert.Equal(["-999"], mast.Missing);
        Assert.Equal(new MappedColumn("TT", "degC"), mast.Columns[WeatherQuantity.AirTemperature]);

        var club = Site.Weather.Stations[1];
        Assert.True(club.IsDaily);
        Assert.Equal((null, false, false, 2.0), (club.Delimiter, club.DecimalComma, club.UseSuppliedEto, club.WindHeightM));
        Assert.Equal(StampClock.Standard, club.Time.Clock);
        Assert.Equal([new Gauge("barn", null), new Gauge("club", "club")], Site.Weather.Gauges);
        Assert.Equal(5.08, Site.Weather.Normals!.EtoMmPerDay[11], 1e-9);
        Assert.Equal(12, Site.Weather.Normals.RainMm[11]);
    }

    [Fact]
    public void Controllers()
    {
        var (a, b) = (Site.Controllers[0], Site.Controllers[1]);
        Assert.Equal((PercentApplies.None, 0.5, MinutesRounding.Down, ProgramOverlap.Stack), (a.Applies, a.MinutesStep, a.Rounding, a.Overlap));
        Assert.Equal((TimeSpan.FromSeconds(20), 7, true, 1), (a.StationGap, a.PauseDays, a.ClockStaysStandard, a.Route));
        Assert.Equal((1.5, false), (a.LeastRunMinutes, a.ShowsChange));
        Assert.Equal(new VisitDays.DayOfMonth(31), a.Programs[0].Visit);
        Assert.Equal([new TimeOnly(1, 0), new TimeOnly(4, 0)], a.Programs[1].Starts);
        Assert.Equal([DayOfWeek.Monday], Assert.IsType<WaterDays.Weekdays>(a.Programs[1].Days).Days);
        Assert.Equal((PercentApplies.Controller, 0.0, 250.0, 1.0, 7), (b.Applies, b.PercentMin, b.PercentMax, b.PercentStep, b.Route));
    }

    [Fact]
    public void A_restriction_with_everything()
    {
        var rule = Assert.Single(Site.Restrictions);
        Assert.Equal(("Stage 2", new DateOnly(2026, 7, 1), new DateOnly(2026, 8, 31), 80.0), (rule.Name, rule.From, rule.Until, rule.MostPercent));
        Assert.Equal(["lawn"], rule.Areas);
        Assert.True(rule.DaysNotAllowed!.Includes(new DateOnly(2026, 7, 5)));
        Assert.Equal(new WateringWindow(new(10, 0), new(18, 0)), rule.HoursNotAllowed);
    }

    [Fact]
    public void Stations_take_what_they_lack_from_their_area()
    {
        var (green, lawn, other) = (Site.Stations[0], Site.Stations[1], Site.Stations[2]);
        Assert.Equal((14.0, 0.9, "club"), (green.Rate.MmPerHour, green.Exposure, green.Gauge));
        Assert.Equal("=1+1; a \"quoted\" note", green.Note);
        Assert.Equal((12.0, 1.2, "barn", RateKnown.Assumed), (lawn.Rate.MmPerHour, lawn.Exposure, lawn.Gauge, lawn.RateKnown));
        Assert.Equal(new StationKey("A", "s2"), lawn.Key);
        Assert.Equal(1.5, lawn.BaseMinutes["2"]);

        // 60 L/min on 200 m²: 60 × 60 / 200 = 18 mm/h.
        Assert.Equal((18.0, 1.0, "barn"), (other.Rate.MmPerHour, other.Exposure, other.Gauge));
    }
}
