using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Files.Sites;
using Xunit;

namespace DailyAdjust.Tests.Files.Logbook;

/// <summary>C2 has no percentage: station 1 has 12 min in P2, 4 and 5 have 75 min in P1, 6 has 66.</summary>
public sealed class KeyedMinutesTests
{
    private static readonly Site Site = SiteReader.Read(
        "site.yaml", ExampleSiteFiles.SiteYaml.Replace("{ applies: program, min: 10 %, max: 150 %, step: 10 % }", "{ applies: none }", StringComparison.Ordinal), "stations.csv", ExampleSiteFiles.StationsCsv).Site!;

    [Theory]
    [InlineData("C2/1", "9 min", "9 of 12 min is 75 %: write setting C2/P2 75")]
    [InlineData("C2/4", "1 h", "60 of 75 min is 80 %: write setting C2/P1 80")]
    [InlineData("C2/1", "10 min", "10 of 12 min is 83.3 %: write setting C2/P2 83.3")]
    [InlineData("C2/P1", "20 min", "divide them by those in stations.csv and write setting C2/P1 with the percentage (20 of 25 min is 80 %)")]
    [InlineData("C2", "20 min", "divide them by those in stations.csv and write setting C2 with the percentage (20 of 25 min is 80 %)")]
    public void Minutes_are_refused_with_what_to_write(string where, string minutes, string hint)
    {
        var reading = LogbookReader.Read(new LogLine { Time = "2026-06-05 10:30", Kind = "setting", Where = where, Value = minutes }, Site);
        Assert.Empty(reading.Entries);
        var problem = Assert.Single(reading.Problems);
        Assert.Equal(("the minutes of C2 are logged as their percent of those in stations.csv", hint), (problem.What, problem.Hint));
    }

    [Theory]
    [InlineData("C2", 120)]
    [InlineData("C2/P1", 83.3)]
    [InlineData("C2", 640)]
    public void Any_percent_of_them_is_taken_without_a_word(string where, double percent)
    {
        var reading = LogbookReader.Read(new LogLine { Time = "2026-06-05 10:30", Kind = "setting", Where = where, Value = percent.ToString(System.Globalization.CultureInfo.InvariantCulture) }, Site);
        Assert.Empty(reading.Problems);
        Assert.Equal(percent, Assert.Single(reading.Entries).Value);
    }

    [Fact]
    public void A_box_with_a_percentage_has_no_minutes_to_set()
    {
        var reading = LogbookReader.Read(new LogLine { Time = "2026-06-05 10:30", Kind = "setting", Where = "C1/P1", Value = "20 min" }, Site);
        Assert.Equal(("\"min\" is not a unit that fits here", "units that fit: %"), (Assert.Single(reading.Problems).What, reading.Problems[0].Hint));
    }

    [Fact]
    public void Without_a_limit_in_the_description_there_is_none_below_the_largest_percentage() =>
        Assert.Equal((PercentApplies.None, 1000d), (Site.ControllerOf("C2")!.Applies, Site.ControllerOf("C2")!.PercentMax));
}
