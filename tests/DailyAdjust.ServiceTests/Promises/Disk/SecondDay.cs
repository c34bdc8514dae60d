using System.Text;
using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Disk;

/// <summary>
/// A site with one sheet behind it, and the next morning's inbox: grown weather with a damaged row, a grown logbook, yesterday's round sheet filled in, and a file of which nobody
/// can say what it is. Every test and every try gets a copy.
/// </summary>
internal static class SecondDay
{
    public static readonly DateOnly Date = new(2026, 6, 9);

    /// <summary>Nine minutes before the sheet is due at 05:00 in Chicago.</summary>
    public static readonly DateTimeOffset Clock = new(2026, 6, 9, 9, 51, 0, TimeSpan.Zero);

    private static readonly Lazy<DirectoryInfo> FirstDay = new(MakeFirstDay);

    /// <summary>By name, what lies in the inbox.</summary>
    public static IReadOnlyDictionary<string, byte[]> Inbox { get; } = Files();

    /// <summary>A home after the first day; its inbox is empty.</summary>
    public static TestHome Home()
    {
        var home = new TestHome();
        Copy(FirstDay.Value.FullName, home.Path);
        return home;
    }

    /// <summary>A home with the second day's files in its inbox, lying still.</summary>
    public static TestHome HomeWithInbox()
    {
        var home = Home();
        PutFiles(Site(home).Inbox);
        return home;
    }

    public static SiteFolder Site(TestHome home) => home.Home.Site(ExampleSite.Name);

    /// <summary>Writes the files of the second day.</summary>
    public static void PutFiles(string folder)
    {
        foreach (var (name, bytes) in Inbox)
        {
            var path = Path.Combine(folder, name);
            File.WriteAllBytes(path, bytes);
            File.SetLastWriteTimeUtc(path, Clock.UtcDateTime.AddHours(-1));
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

    private static Dictionary<string, byte[]> Files()
    {
        var log = File.ReadAllLines(ExampleSite.Logbook).TakeWhile(line => string.CompareOrdinal(line, "2026-06-09") < 0 || line.StartsWith("time", StringComparison.Ordinal));
        var weather = ExampleSite.WeatherUntil("2026-06-09 04:00");
        return new(StringComparer.Ordinal)
        {
            ["holiday.csv"] = "a,b\n1,2\n"u8.ToArray(),
            ["logbook.csv"] = Encoding.UTF8.GetBytes(string.Join('\n', log) + "\n"),
            ["round.csv"] = Filled(File.ReadAllText(Path.Combine(FirstDay.Value.FullName, "sites", ExampleSite.Name, "reports", "2026-06-08", "round.csv"))),
            ["yard-hourly.csv"] = Encoding.UTF8.GetBytes(weather + "2026-06-09 05:00,sixty,70,4.0,0,0.00\n"),
        };
    }

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

    private static DirectoryInfo MakeFirstDay()
    {
        var home = new TestHome();
        AppDomain.CurrentDomain.ProcessExit += (_, _) => home.Dispose();
        var site = ExampleSite.PutInto(home);
        File.WriteAllText(Path.Combine(site.Inbox, "yard-hourly.csv"), ExampleSite.WeatherUntil("2026-06-08 04:00"));
        File.SetLastWriteTimeUtc(Path.Combine(site.Inbox, "yard-hourly.csv"), Clock.UtcDateTime.AddDays(-1));
        var variables = DiskSteps.Variables(home.Path, Clock.AddDays(-1));
        var result = RunningProgram.Run(new ProgramStart("morning", "--home", home.Path) { Variables = variables });
        Assert.True(result.ExitCode == 0, result.ToString());
        Directory.Delete(home.Home.LogsFolder, recursive: true);
        return new DirectoryInfo(home.Path);
    }
}
