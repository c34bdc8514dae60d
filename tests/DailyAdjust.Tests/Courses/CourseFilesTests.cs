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
    public void Description_weather_and_logbook_are_read_whole() => ReadWhole(Size, logged: Size.Controllers);

    [Fact]
    public void So_are_small_ones_of_any_seed_whose_sizes_differ()
    {
        var sizes = Enumerable.Range(1, 40).Select(seed => CourseSize.Small((ulong)seed, new(2026, 6, 9))).ToList();
        Assert.All(sizes, size => ReadWhole(size, size.Controllers + ((size.Through.DayNumber - size.From.DayNumber) / 7)));
        Assert.True(sizes.Select(size => size with { Seed = 0 }).Distinct().Count() > 35);
    }

    private static void ReadWhole(CourseSize size, int logged)
    {
        var files = CourseFiles.Of(size);
        var description = SiteReader.Read("site.yaml", files["site.yaml"], "stations.csv", files["stations.csv"]);
        Assert.Empty(description.Problems);
        var site = description.Site!;
        Assert.Equal((size.Stations, size.Controllers, size.Controllers * size.Programs), (site.Stations.Count, site.Controllers.Count, site.Controllers.Sum(c => c.Programs.Count)));

        var weather = files.Keys.Where(name => name.StartsWith("yard-", StringComparison.Ordinal)).Select(name => StationFile.Read(files[name], site.Weather.Sources.First(), site.Clock)).ToList();
        Assert.All(weather, year => Assert.Empty(year.Report.Problems));
        Assert.Equal((size.Through.DayNumber + 1 - size.From.DayNumber) * 24, weather.Sum(year => year.Counts.Read));

        var logbook = LogbookReader.Read("logbook.csv", files["logbook.csv"], site);
        Assert.Empty(logbook.Problems);
        Assert.Equal(logged, logbook.RowsRead);
    }
}
