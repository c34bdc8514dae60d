using System.Text.RegularExpressions;
using DailyAdjust.ServiceTests;

namespace DailyAdjust.BrowserTests;

/// <summary>The sample course with names that are too long, have no blank to break at, or would be markup if nobody escaped them.</summary>
internal static class HostileNames
{
    public const string Script = "<script>document.title='owned'</script>";
    public const string Picture = "\"><img src=x onerror=document.title='owned'>";
    public const string Formula = "=cmd|' /C calc'!A0 & <b>bold</b>";

    private static readonly string Unbroken = string.Concat(Enumerable.Repeat("Thefarendofthelongestfairway", 4));
    private static readonly string Wordy = "the ground between the old railway bridge and the second row of maples behind the practice green, left of the path that nobody uses any more";
    private static readonly string[] All = [Script, Unbroken, Picture, Wordy, Formula];

    /// <summary>Writes a home with that course, its files in the inbox.</summary>
    public static void Build(string home)
    {
        var sample = Path.Combine(Repository.Root, "sample-weather");
        var site = Path.Combine(home, "sites", "hostile");
        var inbox = Directory.CreateDirectory(Path.Combine(site, "inbox")).FullName;
        foreach (var file in Directory.GetFiles(Path.Combine(sample, "inbox")))
        {
            File.Copy(file, Path.Combine(inbox, Path.GetFileName(file)));
        }

        var names = 0;
        string Next() => All[names++ % All.Length];
        var yaml = Replaced(File.ReadAllText(Path.Combine(sample, "site", "site.yaml")), "(?<before>, name: )(?<name>[^,]+)(?<after>, starts)", Next, "'{0}'");
        yaml = Replaced(yaml, @"(?<before>\n    place: )(?<name>[^\n]+)(?<after>)", Next, "'{0}'");
        yaml = Replaced(yaml, @"(?<before>\n  name: )(?<name>[^\n]+)(?<after>)", () => $"{Script} {Unbroken}", "'{0}'");
        File.WriteAllText(Path.Combine(site, "site.yaml"), yaml);
        File.WriteAllText(Path.Combine(site, "stations.csv"), Replaced(File.ReadAllText(Path.Combine(sample, "site", "stations.csv")), @"(?<before>\nB\d,\d+,)(?<name>[^,]+)(?<after>,)", Next, "\"{0}\""));
        var logbook = Path.Combine(inbox, "logbook.csv");
        File.WriteAllText(logbook, Replaced(File.ReadAllText(logbook), "(?<before>,)(?<name>\"lateral broken[^\"]+\"|lateral broken[^,\n]+)(?<after>)", () => $"{Script} {Unbroken}", "\"{0}\""));
    }

    private static string Replaced(string text, string pattern, Func<string> name, string quoted)
    {
        var count = 0;
        var replaced = Regex.Replace(text, pattern, match =>
        {
            count++;
            var quote = quoted[..1];
            var value = name().Replace(quote, quote + quote, StringComparison.Ordinal);
            return match.Groups["before"].Value + quoted.Replace("{0}", value, StringComparison.Ordinal) + match.Groups["after"].Value;
        }, RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(10));
        return count > 0 ? replaced : throw new InvalidOperationException($"The sample has nothing like {pattern} any more.");
    }
}
