using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Advice;
using Xunit;

namespace DailyAdjust.Tests.Morning;

/// <summary>First days and spring: nothing is left out or cut on ground of which nobody knows how wet it is.</summary>
public class AssumedSoilTests
{
    private static readonly Area Roomy = SmallCourse.Area with { LeaveEmpty = 0.9, Soil = SmallCourse.Area.Soil with { FieldCapacityPercent = 30 } };

    [Fact]
    public void Wet_by_assumption_alone_is_not_skipped_and_the_sheet_asks_for_a_probe()
    {
        var sheet = Sheet(Course(StartSoil.Assumed));
        Assert.Equal((AdviceKind.Leave, 100d), (sheet.Programs[0].Advice, sheet.Programs[0].Percent!.Value));
        Assert.Equal("assumed-soil", sheet.Programs[0].Chain[0].Code);
        Assert.Equal(new AssumedZone(new("C1", "1"), "C1/1", SmallCourse.Monday.AddDays(-3)), Assert.Single(sheet.Freshness.AssumedSoil));
    }

    [Fact]
    public void Soil_that_is_known_is_skipped()
    {
        var sheet = Sheet(Course(StartSoil.Full));
        Assert.Equal(AdviceKind.Skip, sheet.Programs[0].Advice);
        Assert.Empty(sheet.Freshness.AssumedSoil);
    }

    [Fact]
    public void A_number_below_the_setting_is_not_given_either_but_one_above_is()
    {
        var less = Course(StartSoil.Assumed) with { DepletionMm = [2], Stations = [SmallCourse.Station(1)] }; // 7 mm tonight of 10: 3 would drain
        Assert.Equal(AdviceKind.Set, Sheet(less, StartSoil.Full).Programs[0].Advice);
        Assert.Equal(AdviceKind.Leave, Sheet(less).Programs[0].Advice);
        var more = Course(StartSoil.Assumed) with { DepletionMm = [60] };
        Assert.Equal(AdviceKind.Set, Sheet(more).Programs[0].Advice);
    }

    [Fact]
    public void A_probe_or_a_soaking_rain_settles_it()
    {
        var probed = Course(StartSoil.Assumed) with { Log = [Entry(LogKind.Probe, new(PlaceKind.Station, "C1", "1")) with { Value = 29, Unit = LogUnit.Percent }] };
        Assert.Equal(AdviceKind.Skip, Sheet(probed).Programs[0].Advice);
        var rained = Course(StartSoil.Assumed) with { Weather = [Day(-1, 120)] };
        Assert.Equal(AdviceKind.Skip, Sheet(rained).Programs[0].Advice);
    }

    [Fact]
    public void After_the_season_opened_it_is_asked_again()
    {
        var opened = Course(StartSoil.Full) with { Log = [Entry(LogKind.Season, new(PlaceKind.Site, "", "")) with { Text = "open" }] };
        Assert.Equal(AdviceKind.Leave, Sheet(opened).Programs[0].Advice);
        Assert.Equal(SmallCourse.Monday.AddDays(-2), Assert.Single(Sheet(opened).Freshness.AssumedSoil).Since);
    }

    [Fact]
    public void A_few_unknown_zones_do_not_stop_what_the_known_ones_carry()
    {
        // A fifth of the ground is unknown: the other four fifths are what a number has to serve.
        var five = Course(StartSoil.Assumed) with
        {
            Stations = [.. Enumerable.Range(1, 5).Select(i => SmallCourse.Station(i, area: Roomy))],
            DepletionMm = [5, 5, 5, 5, 5],
            Log = [.. Enumerable.Range(1, 4).Select(i => Entry(LogKind.Probe, new(PlaceKind.Station, "C1", $"{i}")) with { Value = 29, Unit = LogUnit.Percent })],
        };
        Assert.Equal(AdviceKind.Skip, Sheet(five).Programs[0].Advice);
        Assert.Equal(AdviceKind.Leave, Sheet(five with { Log = [.. five.Log.Take(3)] }).Programs[0].Advice);
    }

    [Fact]
    public void A_ceiling_of_the_place_cuts_all_the_same()
    {
        var stage = Course(StartSoil.Assumed) with { Restrictions = [new Restriction { Name = "stage 2", MostPercent = 60 }], DepletionMm = [60] };
        Assert.Equal((AdviceKind.Set, 60d), (Sheet(stage).Programs[0].Advice, Sheet(stage).Programs[0].Percent!.Value));
    }

    private static SmallCourse Course(StartSoil soil) => SmallCourse.OneStation(5, Roomy) with { StartSoil = soil };

    private static MorningSheet Sheet(SmallCourse course, StartSoil? soil = null) => (course with { StartSoil = soil ?? course.StartSoil }).Sheet();

    private static LogEntry Entry(LogKind kind, Place where) => new() { Time = new(SmallCourse.Monday.AddDays(-2), new(9, 0)), Kind = kind, Where = where };

    private static WeatherDay Day(int after, double rainMm) => new()
    {
        Date = SmallCourse.Monday.AddDays(after),
        Station = "shop",
        EtoMm = 5,
        Basis = EtoBasis.Daily,
        Rain = [new GaugeDay("yard", rainMm, rainMm > 0 ? [new RainFall(new DateTimeOffset(SmallCourse.Monday.AddDays(after).ToDateTime(new(12, 0)), TimeSpan.Zero), rainMm)] : [], RainBasis.Measured, 0)],
    };
}
