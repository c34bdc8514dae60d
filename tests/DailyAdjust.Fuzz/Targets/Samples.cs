using System.Text;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Files;
using DailyAdjust.Tests.Files.Formats;
using DailyAdjust.Tests.Files.Sites;

namespace DailyAdjust.Fuzz.Targets;

/// <summary>Good files that several targets begin with.</summary>
internal static class Samples
{
    private const int LinesOfWeather = 60;

    /// <summary>Their numbers of programs differ, and so the columns of their stations.csv.</summary>
    private static readonly IReadOnlyList<(SampleCourse Course, string Weather)> Invented =
    [
        SampleCourse.Invented(new() { Seed = 1, Stations = 6, Controllers = 2, Programs = 2, From = new(2026, 6, 1), Through = new(2026, 6, 22) }),
        SampleCourse.Invented(new() { Seed = 2, Stations = 7, Controllers = 1, Programs = 5, From = new(2026, 3, 1), Through = new(2026, 3, 29) }),
    ];

    public static IReadOnlyList<SampleCourse> Courses { get; } =
    [
        new(ExampleSiteFiles.SiteYaml, ExampleSiteFiles.StationsCsv, ExampleSiteFiles.LogbookCsv),
        new(EveryKeyText.Yaml, EveryKeyText.Csv, null),
        new(Shipped("site", "site.yaml"), Shipped("site", "stations.csv"), Shipped("inbox", "logbook.csv")),
        .. Invented.Select(i => i.Course),
    ];

    /// <summary>The example's.</summary>
    public static Site Site => Courses[0].Site;

    /// <summary>The first lines of each file of the sample weather, and of the invented courses'.</summary>
    public static IReadOnlyList<string> Weather { get; } =
    [
        .. Directory.EnumerateFiles(Folder("inbox")).Order(StringComparer.Ordinal).Where(path => !path.EndsWith("logbook.csv", StringComparison.Ordinal))
            .Select(path => string.Join('\n', File.ReadLines(path).Take(LinesOfWeather)) + "\n"),
        .. Invented.Select(i => string.Join('\n', i.Weather.Split('\n').Take(LinesOfWeather)) + "\n"),
    ];

    /// <summary>A night and a day of an invented course's weather, by its own column map.</summary>
    public static GoodFile CourseWeather { get; } = new("invented course", Invented[0].Course.Site.Weather.Stations[0], [Invented[0].Weather.Split('\n')[0]], [.. Invented[0].Weather.Split('\n')[1..25]]);

    /// <summary>The course that a text came of; where damage took away what tells it, any.</summary>
    /// <param name="isOf">Whether it came of this one.</param>
    /// <param name="random">Chooses where none is it.</param>
    public static SampleCourse CourseOf(Func<SampleCourse, bool> isOf, Random random)
    {
        var any = Courses[random.Next(Courses.Count)];
        return Courses.FirstOrDefault(isOf, any);
    }

    public static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    private static string Shipped(string folder, string file) => File.ReadAllText(Path.Combine(Folder(folder), file));

    private static string Folder(string folder) => Path.Combine(AppContext.BaseDirectory, "sample-weather", folder);
}
