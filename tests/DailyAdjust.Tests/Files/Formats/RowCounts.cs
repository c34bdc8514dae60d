using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Tests.Files.Formats;

/// <summary>Rows of a weather file, counted by other means than its reader's.</summary>
internal static partial class RowCounts
{
    /// <summary>Lines that are not blank; one that holds a control character is no blank one. A byte order mark begins a file that was added to another.</summary>
    /// <param name="text">Below the header.</param>
    /// <param name="isStation">A station's row of empty cells is blank; the public formats have none.</param>
    public static int Lines(string text, bool isStation) =>
        LineEnd().Split(text).Count(line => (line is ['\uFEFF', ..] ? line[1..] : line).Trim('\u001A') is var bare && (!string.IsNullOrWhiteSpace(isStation ? bare.Replace(',', ' ') : bare) || bare.Any(c => c is < ' ' and not '\t')));

    /// <summary>Rows of a station that is not the site's are told as a number and are not counted otherwise.</summary>
    public static int OfOthers(ReadingsReport report) =>
        report.Problems.Select(problem => Others().Match(problem.What)).Where(match => match.Success).Sum(match => int.Parse(match.Groups["count"].ValueSpan, CultureInfo.InvariantCulture));

    /// <summary>Values of a forecast's layers.</summary>
    /// <param name="json">The document.</param>
    /// <param name="layers">Names of those that are read.</param>
    public static int OfForecast(byte[] json, IReadOnlyList<string> layers)
    {
        using var document = JsonDocument.Parse(json);
        var top = document.RootElement.EnumerateObject().ToList();
        return top.Concat(top.Where(p => p.NameEquals("properties") && p.Value.ValueKind == JsonValueKind.Object).SelectMany(p => p.Value.EnumerateObject()))
            .Where(p => layers.Contains(p.Name, StringComparer.Ordinal) && p.Value.ValueKind == JsonValueKind.Object)
            .SelectMany(p => p.Value.EnumerateObject())
            .Where(p => p.NameEquals("values") && p.Value.ValueKind == JsonValueKind.Array)
            .Sum(p => p.Value.GetArrayLength());
    }

    [GeneratedRegex("\r\n|\r|\n", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex LineEnd();

    [GeneratedRegex("^(?<count>[0-9]+) rows of other stations|^the file has no row of station [^;]*; it has (?<count>[0-9]+) of ", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Others();
}
