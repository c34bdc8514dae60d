using System.IO.Enumeration;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Readings;

/// <summary>Which weather station a file belongs to.</summary>
public static class ReadingsFile
{
    /// <summary>The first source whose file pattern (* and ?) fits the name, upper and lower case alike; null = none.</summary>
    /// <param name="fileName">A name, or a path of which only the name counts.</param>
    /// <param name="sources">In the site's order of preference.</param>
    public static WeatherSource? SourceOf(string fileName, IEnumerable<WeatherSource> sources)
    {
        var name = Path.GetFileName(fileName);
        return sources.FirstOrDefault(source => Fits(source.Files, name));
    }

    /// <summary>Whether a file's name fits a pattern (* and ?), upper and lower case alike.</summary>
    public static bool Fits(string pattern, string name) => FileSystemName.MatchesSimpleExpression(pattern, name, ignoreCase: true);
}
