using System.Text;
using DailyAdjust.Service.Home;
using DailyAdjust.Tests.Courses;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Disk;

/// <summary>
/// A site with one sheet behind it, and the next morning's inbox: grown weather with a damaged row, a grown logbook, yesterday's round sheet filled in, and a file of which nobody
/// can say what it is. Every test and every try gets a copy.
/// </summary>
internal sealed class SecondDay
{
    public static readonly DateOnly Date = new(2026, 6, 9);

    /// <summary>Nine minutes before the sheet is due at 05:00 in Chicago.</summary>
    public static readonly DateTimeOffset Clock = new(2026, 6, 9, 9, 51, 0, TimeSpan.Zero);

    private readonly string _site;
    private readonly IReadOnlyDictionary<string, string> _files;
    private readonly string _weather;
    private readonly string _lastHour;
    private readonly Lazy<DirectoryInfo> _firstDay;
    private readonly Lazy<IReadOnlyDictionary<string, byte[]>> _inbox;

    /// <param name="site">Its name.</param>
    /// <param name="files">All that a person brings of it: description, logbook, weather, of more days than these two.</param>
    /// <param name="lastHour">Of the weather on either morning, as its file writes it.</param>
    private SecondDay(string site, IReadOnlyDictionary<string, string> files, string lastHour)
    {
        (_site, _files, _lastHour) = (site, files, lastHour);
        _weather = files.Keys.Single(name => name.StartsWith("yard-", StringComparison.Ordinal));
        _firstDay = new(MakeFirstDay);
        _inbox = new(MakeInbox);
    }

    /// <summary>Of the example site.</summary>
    public static SecondDay Example { get; } = new(ExampleSite.Name, ExampleFiles(), "04:00");

    /// <summary>By name, what lies in the inbox.</summary>
    public IReadOnlyDictionary<string, byte[]> Inbox => _inbox.Value;

    /// <summary>Of an invented course: each seed gives another one, and another size.</summary>
    public static SecondDay Of(ulong seed)
    {
        var size = CourseSize.Small(seed, Date);
        TestContext.Current.TestOutputHelper?.WriteLine(size.ToString());

        // Its station writes standard time, an hour behind.
        return new("course", CourseFiles.Of(size), "03:00");
    }

    public static SiteFolder Site(TestHome home) => home.Home.Site(Path.GetFileName(Assert.Single(Directory.GetDirectories(home.Home.SitesFolder))));

    /// <summary>A home after the first day; its inbox is empty.</summary>
    public TestHome Home()
    {
        var home = new TestHome();
        Copy(_firstDay.Value.FullName, home.Path);
        return home;
    }

    /// <summary>A home with the second day's files in its inbox, lying still.</summary>
    public TestHome HomeWithInbox()
    {
        var home = Home();
        PutFiles(Site(home).Inbox);
        return home;
    }

    /// <summary>A home with them in a folder of its own.</summary>
    public TestHome HomeWithFiles()
    {
        var home = Home();
        PutFiles(Directory.CreateDirectory(FilesOf(home)).FullName);
        return home;
    }

    /// <summary>The folder that <see cref="HomeWithFiles"/> makes.</summary>
    public static string FilesOf(TestHome home) => Path.Combine(home.Path, "files");

    /// <summary>Writes the files of the second day.</summary>
    public void PutFiles(string folder)
    {
        foreach (var (name, bytes) in Inbox)
        {
            Put(folder, name, bytes, Clock.UtcDateTime.AddHours(-1));
        }
    }

    public static void Copy(string from, string to)
    {
        foreach (var folder in Directory.GetDirectories(from, "*", SearchOption.AllDirectories))
        {
            Directory.CreateDirectory(Path.Combine(to, Path.GetRelativePath(from, folder)));
        }

        foreach (var file in Directory.GetFiles(from, "*", SearchOption.AllDirectories))
        {
            File.Copy(file, Path.Combine(to, Path.GetRelativePath(from, file)));
        }
    }

    private static Dictionary<string, string> ExampleFiles() => new(StringComparer.Ordinal)
    {
        ["site.yaml"] = File.ReadAllText(Path.Combine(ExampleSite.Folder, "site", "site.yaml")),
        ["stations.csv"] = File.ReadAllText(Path.Combine(ExampleSite.Folder, "site", "stations.csv")),
        ["logbook.csv"] = File.ReadAllText(ExampleSite.Logbook),
        ["yard-hourly.csv"] = File.ReadAllText(ExampleSite.Weather),
    };

    private Dictionary<string, byte[]> MakeInbox() => new(StringComparer.Ordinal)
    {
        ["holiday.csv"] = "a,b\n1,2\n"u8.ToArray(),
        ["logbook.csv"] = Encoding.UTF8.GetBytes(ExampleSite.RowsUntil(_files["logbook.csv"], "2026-06-08")),
        ["round.csv"] = Filled(File.ReadAllText(Path.Combine(_firstDay.Value.FullName, "sites", _site, "reports", "2026-06-08", "round.csv"))),
        [_weather] = Encoding.UTF8.GetBytes(ExampleSite.RowsUntil(_files[_weather], $"2026-06-09 {_lastHour}") + "2026-06-09 05:00,sixty,70,4.0,0,0.00\n"),
    };

    /// <summary>Its first row is done.</summary>
    private static byte[] Filled(string round)
    {
        var lines = round.ReplaceLineEndings("\n").Split('\n');
        var done = Array.IndexOf(lines[0].TrimStart('\uFEFF').Split(','), "done");
        var cells = lines[1].Split(',');
        cells[done] = "yes";
        lines[1] = string.Join(',', cells);
        return Encoding.UTF8.GetBytes(string.Join('\n', lines));
    }

    private DirectoryInfo MakeFirstDay()
    {
        var home = new TestHome();
        AppDomain.CurrentDomain.ProcessExit += (_, _) => home.Dispose();
        var site = home.EmptySite(_site);
        File.WriteAllText(site.SiteFile, _files["site.yaml"]);
        File.WriteAllText(site.StationsFile, _files["stations.csv"]);
        Put(site.Inbox, _weather, Encoding.UTF8.GetBytes(ExampleSite.RowsUntil(_files[_weather], $"2026-06-08 {_lastHour}")), Clock.UtcDateTime.AddDays(-1));
        var variables = DiskSteps.Variables(home.Path, Clock.AddDays(-1));
        var result = RunningProgram.Run(new ProgramStart("morning", "--home", home.Path) { Variables = variables });
        Assert.True(result.ExitCode == 0, result.ToString());
        Directory.Delete(home.Home.LogsFolder, recursive: true);
        return new DirectoryInfo(home.Path);
    }

    private static void Put(string folder, string name, byte[] bytes, DateTime written)
    {
        var path = Path.Combine(folder, name);
        File.WriteAllBytes(path, bytes);
        File.SetLastWriteTimeUtc(path, written);
    }
}
