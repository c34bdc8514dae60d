using DailyAdjust.Service.Home;

namespace DailyAdjust.ServiceTests;

/// <summary>A home that holds the example site, and its input and expected files.</summary>
public static class ExampleSite
{
    public const string Name = "tamarack";

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

    /// <summary>The same, with weather and logbook taken in by the real program.</summary>
    public static SiteFolder TakenIn(TestHome home)
    {
        var site = PutInto(home);
        var result = RunningProgram.Run("ingest", "--home", home.Path, Weather, Logbook);
        Assert(result);
        return site;
    }

    /// <summary>The rows of weather up to and with a time, as the station would have written them by then.</summary>
    public static string WeatherUntil(string lastTime)
    {
        var lines = File.ReadAllLines(Weather);
        return string.Join('\n', lines.Take(1).Concat(lines.Skip(1).TakeWhile(l => string.CompareOrdinal(l[..lastTime.Length], lastTime) <= 0))) + "\n";
    }

    private static void Assert(ProgramResult result)
    {
        if (result.ExitCode != 0)
        {
            throw new InvalidOperationException(result.ToString());
        }
    }
}
