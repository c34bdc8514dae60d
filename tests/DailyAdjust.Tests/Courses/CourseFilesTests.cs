using DailyAdjust.Files.Logbook;
using DailyAdjust.Files.Sites;
using DailyAdjust.Tests.Files.Readings;
using Xunit;

namespace DailyAdjust.Tests.Courses;

/// <summary>The invented courses are what they say, and read without a word of complaint.</summary>
public sealed class CourseFilesTests
{
    private static readonly CourseSize Size = new() { Seed = 7, Stations = 53, Controllers = 5, Programs = 4, From = new(2025, 12, 30), Through = new(2026, 1, 2) };

    [Fact]
    public void The_same_seed_gives_the_same_files_and_another_one_others()
    {
        Assert.Equal(CourseFiles.Of(Size), CourseFiles.Of(Size));
        Assert.All(CourseFiles.Of(Size), file => Assert.NotEqual(file.Value, CourseFiles.Of(Size with { Seed = 8 })[file.Key]));
    }

    [Fact]
    public void Description_weather_and_logbook_are_read_whole()
    {
        var files = CourseFiles.Of(Size);
        var description = SiteReader.Read("site.yaml", files["site.yaml"], "stations.csv", files["stations.csv"]);
        Assert.Empty(description.Problems);
        var site = description.Site!;
        Assert.Equal((Size.Stations, Size.Controllers, Size.Controllers * Size.Programs), (site.Stations.Count, site.Controllers.Count, site.Controllers.Sum(c => c.Programs.Count)));

        var weather = new[] { "yard-2025.csv", "yard-2026.csv" }.Select(name => StationFile.Read(files[name], site.Weather.Sources.First(), site.Clock)).ToList();
        Assert.All(weather, year => Assert.Empty(year.Report.Problems));
        Assert.Equal(4 * 24, weather.Sum(year => year.Counts.Read));

        var logbook = LogbookReader.Read("logbook.csv", files["logbook.csv"], site);
        Assert.Empty(logbook.Problems);
        Assert.Equal(Size.Controllers, logbook.RowsRead);
    }
}
