using DailyAdjust.Service.Home;

namespace DailyAdjust.ServiceTests;

/// <summary>A home that holds the example site, and its input and expected files.</summary>
public static class ExampleSite
{
    public const string Name = "tamarack";

    private static readonly Lazy<DirectoryInfo> Once = new(TakeInOnce);

    public static string Folder { get; } = Path.Combine(Repository.Root, "tests", "DailyAdjust.Tests", "Data", "example-site");

    public static string Weather => Path.Combine(Folder, "yard-hourly.csv");

    public static string Logbook => Path.Combine(Folder, "logbook.csv");

    /// <summary>Puts the description in place; nothing is taken in yet.</summary>
    public static SiteFolder PutInto(TestHome home)
    {
        var site = home.EmptySite(Name);
        File.Copy(Path.Combine(Folder, "site", "site.yaml"), site.SiteFile);
        File.Copy(Path.Combine(Folder, "site", "stations.csv"), site.StationsFile);
        return site;
    }

    /// <summary>The same, with weather and logbook taken in by the real program (once: the tests get copies of its folder).</summary>
    public static SiteFolder TakenIn(TestHome home)
    {
        var site = home.EmptySite(Name);
        foreach (var file in Once.Value.GetFiles())
        {
            file.CopyTo(Path.Combine(site.Path, file.Name));
        }

        return site;
    }

    /// <summary>The rows of weather up to and with a time, as the station would have written them by then.</summary>
    public static string WeatherUntil(string lastTime) => RowsUntil(File.ReadAllText(Weather), lastTime);

    /// <summary>A file's header and its rows up to and with a time or date, with which each begins.</summary>
    public static string RowsUntil(string text, string lastTime)
    {
        var lines = text.ReplaceLineEndings("\n").Split('\n', StringSplitOptions.RemoveEmptyEntries);
        return string.Join('\n', lines.Take(1).Concat(lines.Skip(1).TakeWhile(l => string.CompareOrdinal(l, 0, lastTime, 0, lastTime.Length) <= 0))) + "\n";
    }

    private static DirectoryInfo TakeInOnce()
    {
        var home = new TestHome();
        AppDomain.CurrentDomain.ProcessExit += (_, _) => home.Dispose();
        var site = PutInto(home);
        var result = RunningProgram.Run("ingest", "--home", home.Path, Weather, Logbook);
        return result.ExitCode == 0 ? new DirectoryInfo(site.Path) : throw new InvalidOperationException(result.ToString());
    }
}
