using System.Globalization;
using DailyAdjust.ServiceTests;

namespace DailyAdjust.BrowserTests;

/// <summary>
/// The sample course on a morning on which everything that widens a page comes together: boxes that pause by themselves, a wind gauge that is dead and a sun sensor that reads too
/// high, an allotment and a permit, and a box that lost its power in the night.
/// </summary>
internal static class DoubtfulCourse
{
    private const string Month = "course-2026-07.csv";
    private const int Wind = 3;
    private const int Sun = 4;

    private static readonly string[] Days = [.. Enumerable.Range(8, 8).Select(d => $"07/{d.ToString("00", CultureInfo.InvariantCulture)}/2026")];

    private const string PowerLost = "2026-07-16 02:00,power,B2,,,,RK,";

    /// <summary>Writes a home with that course, its files in the inbox.</summary>
    /// <param name="home">Where.</param>
    /// <param name="language">What its people read.</param>
    public static void Build(string home, string language)
    {
        var sample = Path.Combine(Repository.Root, "sample-weather");
        var site = Path.Combine(home, "sites", "doubtful");
        var inbox = Directory.CreateDirectory(Path.Combine(site, "inbox")).FullName;
        foreach (var file in Directory.GetFiles(Path.Combine(sample, "inbox")))
        {
            File.Copy(file, Path.Combine(inbox, Path.GetFileName(file)));
        }

        File.Copy(Path.Combine(sample, "site", "stations.csv"), Path.Combine(site, "stations.csv"));
        var yaml = File.ReadAllText(Path.Combine(sample, "site", "site.yaml")).ReplaceLineEndings("\n");
        yaml = Replaced(yaml, "\nreport:\n", $"\nreport:\n  language: {language}\n");
        yaml = Replaced(yaml, "    pause: ", "    # pause: ");
        yaml = Replaced(yaml, "    overlap: ", "    pause: 7 d\n    overlap: ");
        yaml = Replaced(yaml, "days: [tue, thu, sat]", "days: every day");
        yaml = Replaced(yaml, "\npump:", "\nwater: { allotment: 40 acre-ft, permit: { month: 2800000 gal } }\npump:");
        File.WriteAllText(Path.Combine(site, "site.yaml"), yaml);
        File.AppendAllText(Path.Combine(inbox, "logbook.csv"), $"\n{PowerLost}\n");
        var weather = Path.Combine(inbox, Month);
        File.WriteAllLines(weather, File.ReadAllLines(weather).Select(Doubtful));
    }

    private static string Doubtful(string row)
    {
        var cells = row.Split(',');
        if (Array.Exists(Days, row.StartsWith))
        {
            cells[Wind] = "---";
            cells[Sun] = (double.Parse(cells[Sun], CultureInfo.InvariantCulture) * 1.5).ToString("0", CultureInfo.InvariantCulture);
        }

        return string.Join(',', cells);
    }

    private static string Replaced(string text, string old, string by) =>
        text.Contains(old, StringComparison.Ordinal) ? text.Replace(old, by, StringComparison.Ordinal) : throw new InvalidOperationException($"The sample has nothing like {old} any more.");
}
