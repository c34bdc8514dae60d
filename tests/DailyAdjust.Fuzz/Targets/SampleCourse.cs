using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Files.Sites;
using DailyAdjust.Tests.Courses;

namespace DailyAdjust.Fuzz.Targets;

/// <summary>Good files that belong together: a description, and the logbook that was kept with it.</summary>
internal sealed class SampleCourse
{
    /// <param name="yaml">site.yaml.</param>
    /// <param name="csv">stations.csv.</param>
    /// <param name="logbook">Null = there is none.</param>
    public SampleCourse(string yaml, string csv, string? logbook)
    {
        (Yaml, Csv, Logbook) = (yaml, csv, logbook);
        Site = SiteReader.Read("site.yaml", yaml, "stations.csv", csv).Site ?? throw new InvalidOperationException("A sample is not read: " + FirstLine(yaml));
        if (logbook is not null && LogbookReader.Read("logbook.csv", logbook, Site) is not { RowsRefused: 0, RowsRead: > 0 })
        {
            throw new InvalidOperationException("A logbook is not that of its sample: " + Site.Name);
        }
    }

    public string Yaml { get; }

    public string Csv { get; }

    public string? Logbook { get; }

    public Site Site { get; }

    /// <summary>An invented one, so small that thousands are read in a minute, and its weather.</summary>
    public static (SampleCourse Course, string Weather) Invented(CourseSize size)
    {
        var files = CourseFiles.Of(size);
        return (new(files["site.yaml"], files["stations.csv"], files["logbook.csv"]), files.Single(file => file.Key.StartsWith("yard-", StringComparison.Ordinal)).Value);
    }

    /// <summary>Whether a site.yaml came of this one: the site's name still stands in it.</summary>
    public bool IsSiteOf(string yaml) => yaml.Contains(Site.Name, StringComparison.Ordinal);

    /// <summary>Whether a stations.csv came of this one: it begins with the same columns.</summary>
    public bool IsStationsOf(string csv) => string.Equals(FirstLine(csv), FirstLine(Csv), StringComparison.Ordinal);

    /// <summary>Whether a logbook came of this one: the first entry still stands in it.</summary>
    public bool IsLogbookOf(string logbook) => Logbook is not null && logbook.Contains(FirstEntry(Logbook), StringComparison.Ordinal);

    private static string FirstLine(string text) => text.Split('\n', 2)[0].TrimEnd('\r');

    private static string FirstEntry(string logbook) => logbook.Split('\n', 3)[1].TrimEnd('\r');
}
