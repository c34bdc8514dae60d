using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Tests.Advice;
using Xunit;

namespace DailyAdjust.Tests.Morning;

/// <summary>A setting that the dial cannot show: asked about, never a number. The box of the small course shows 0 to 200 %.</summary>
public class ImpossibleSettingTests
{
    [Theory]
    [InlineData(500, true)]
    [InlineData(200.5, true)]
    [InlineData(200, false)]
    [InlineData(87, false)]
    [InlineData(0, false)]
    public void Beyond_the_range_it_is_not_used(double percent, bool beyond)
    {
        var sheet = Sheet(Said(-2, 60), Said(-1, percent));
        Assert.Equal(beyond ? 60 : percent, sheet.Programs[0].Present.Percent);
        Assert.Equal(beyond, sheet.SettingsNotUsed.Count == 1);
        Assert.True(sheet.Programs[0].Confirmed);
    }

    [Fact]
    public void Alone_it_confirms_nothing()
    {
        var sheet = Sheet(Said(-1, 500));
        Assert.Equal((100d, false), (sheet.Programs[0].Present.Percent, sheet.Programs[0].Confirmed));
        Assert.Equal(sheet.Programs[0].ExactPercent, Sheet().Programs[0].ExactPercent);
        var asked = Assert.Single(sheet.SettingsNotUsed);
        Assert.Equal(("C1", "C1/P1", 500d, 200d), (asked.Controller.Id, Assert.Single(asked.Programs).ToString(), asked.Entry.Value!.Value, asked.Controller.PercentMax));
    }

    [Fact]
    public void A_later_word_settles_it_and_an_earlier_one_does_not()
    {
        Assert.Empty(Sheet(Said(-2, 500), Said(-1, 80)).SettingsNotUsed);
        Assert.Empty(Sheet(Said(-2, 500), Said(-1, 0)).SettingsNotUsed);
        Assert.Single(Sheet(Said(-1, 500), Said(-2, 80)).SettingsNotUsed);

        // A round that turned nothing here says nothing of the dial.
        var sheet = new IssuedSheet(SmallCourse.Monday.AddDays(-1), 1, default, [new IssuedLine(new("C1", "P1"), AdviceKind.Leave, 100, false)]);
        var round = new LogEntry { Time = new(SmallCourse.Monday, new(4, 0)), Kind = LogKind.Round, Where = new(PlaceKind.Site, "", ""), Sheet = sheet.Date, Issue = 1 };
        Assert.Single((SmallCourse.OneStation(10) with { Sheets = [sheet], Log = [Said(-2, 500), round] }).Sheet().SettingsNotUsed);

        // At the same time the one that arrived later is the correction.
        Assert.Empty(Sheet(Said(-1, 500), Said(-1, 80) with { Ordinal = 1 }).SettingsNotUsed);
        Assert.Single(Sheet(Said(-1, 80), Said(-1, 500) with { Ordinal = 1 }).SettingsNotUsed);
    }

    [Fact]
    public void The_range_is_that_of_the_day_on_which_it_was_said()
    {
        var course = SmallCourse.OneStation(10) with { Log = [Said(-1, 150)] };
        var (inputs, site) = (course.Inputs(), course.Site);
        var narrow = site with { Controllers = [site.Controllers[0] with { PercentMax = 100 }] };
        Assert.Equal(150, MorningCalculation.Run(inputs with { Versions = [new(site.Start, site), new(SmallCourse.Monday, narrow)] }).Programs[0].Present.Percent);
        Assert.Equal(100, MorningCalculation.Run(inputs with { Versions = [new(site.Start, narrow), new(SmallCourse.Monday, site)] }).Programs[0].Present.Percent);
    }

    private static MorningSheet Sheet(params LogEntry[] log) => (SmallCourse.OneStation(10) with { Log = log }).Sheet();

    private static LogEntry Said(int day, double percent) => new()
    {
        Time = new(SmallCourse.Monday.AddDays(day), new(9, 0)),
        Kind = LogKind.Setting,
        Where = new(PlaceKind.Program, "C1", "P1"),
        Value = percent,
        Unit = LogUnit.Percent,
    };
}
