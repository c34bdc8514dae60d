using System.Globalization;
using System.Text.RegularExpressions;

namespace DailyAdjust.Service.Setup;

/// <summary>What the header and the first row of a weather CSV say about its columns; a person confirms it in site.yaml.</summary>
/// <param name="Files">Pattern of file names.</param>
/// <param name="TimeColumn">Header of the time column.</param>
/// <param name="Pattern">How times are written.</param>
/// <param name="Interval">"1 h", "15 min", "1 d".</param>
/// <param name="Columns">Key of site.yaml to header, in the file's order.</param>
public sealed record WeatherFileGuess(
    string Files, string TimeColumn, string Pattern, string Interval, IReadOnlyList<KeyValuePair<string, string>> Columns)
{
    /// <summary>Its numbers have a decimal comma.</summary>
    public bool DecimalComma { get; init; }

    /// <summary>The date of its first row; null = not read from a file.</summary>
    public DateOnly? FirstDate { get; init; }

    /// <summary>The file; null = not read from one.</summary>
    public string? Path { get; init; }

    private const int LinesSearched = 20;
    private const string NotUsed = "";
    private const RegexOptions Plainly = RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking;

    private static readonly char[] Delimiters = ['\t', ';', ','];

    private static readonly string[] Patterns =
    [
        "yyyy-MM-dd HH:mm", "yyyy-MM-dd HH:mm:ss", "yyyy-MM-ddTHH:mm", "yyyy-MM-ddTHH:mm:ss", "yyyy-MM-dd",
        "MM/dd/yyyy HH:mm", "M/d/yyyy H:mm", "M/d/yyyy h:mm tt", "MM/dd/yyyy", "M/d/yyyy", "dd.MM.yyyy HH:mm", "dd.MM.yyyy", "yyyy/MM/dd HH:mm",
    ];

    /// <summary>Trade words in headers, first match wins; the key is that of site.yaml.</summary>
    private static readonly (string Key, string Words)[] Quantities =
    [
        ("dew_point", "dew"),
        ("relative_humidity", @"\brh\b|humid"),
        (NotUsed, "wind.*(dir|gust)|gust"),
        ("wind_speed", "wind"),
        ("solar_radiation", "solar|radiation|\\bsun\\b"),
        ("rain", "rain|precip"),
        ("air_temperature_max", "(temp|air).*(max|high)|(max|high).*(temp)|^high"),
        ("air_temperature_min", "(temp|air).*(min|low)|(min|low).*(temp)|^low"),
        ("air_temperature", "temp|\\bair\\b"),
    ];

    /// <summary>Null where no header with a time column and a known quantity stands in the first lines.</summary>
    public static WeatherFileGuess? Of(string path)
    {
        var lines = File.ReadLines(path).Take(LinesSearched + 2).ToList();
        for (var i = 0; i + 1 < lines.Count; i++)
        {
            var delimiter = Delimiters.MaxBy(c => lines[i].Count(x => x == c));
            var header = Cells(lines[i], delimiter);
            var first = Cells(lines[i + 1], delimiter);
            var time = header.FindIndex(cell => Regex.IsMatch(cell, "time|date|logged|stamp", Plainly));
            var columns = ColumnsOf(header);
            if (header.Count < 2 || time < 0 || columns.Count == 0 || first.Count <= time || PatternOf(first[time]) is not { } pattern)
            {
                continue;
            }

            var second = i + 2 < lines.Count ? Cells(lines[i + 2], delimiter) : [];
            return new(FilePattern(path), header[time], pattern, IntervalOf(pattern, first[time], second.ElementAtOrDefault(time)), columns)
            {
                DecimalComma = delimiter != ',' && first.Concat(second).Any(cell => Regex.IsMatch(cell, "^[-+]?[0-9]+,[0-9]+$", Plainly)),
                FirstDate = Earliest(pattern, first[time], Cells(File.ReadLines(path).Last(line => line.Length > 0), delimiter).ElementAtOrDefault(time)),
                Path = path,
            };
        }

        return null;
    }

    private static List<KeyValuePair<string, string>> ColumnsOf(List<string> header)
    {
        var found = new List<KeyValuePair<string, string>>();
        foreach (var cell in header)
        {
            var key = Array.Find(Quantities, q => Regex.IsMatch(cell, q.Words, Plainly)).Key;
            if (!string.IsNullOrEmpty(key) && !found.Exists(pair => string.Equals(pair.Key, key, StringComparison.Ordinal)))
            {
                found.Add(KeyValuePair.Create(key, cell));
            }
        }

        return found;
    }

    private static string? PatternOf(string cell) => Array.Find(Patterns, pattern => TryTime(cell, pattern, out _));

    private static string IntervalOf(string pattern, string first, string? second)
    {
        if (!pattern.Contains('m', StringComparison.Ordinal))
        {
            return "1 d";
        }

        // Some files have the newest row first.
        var minutes = second is not null && TryTime(first, pattern, out var a) && TryTime(second, pattern, out var b) ? Math.Abs((b - a).TotalMinutes) : 60;
        return minutes is >= 1 and < 60 ? FormattableString.Invariant($"{minutes:0} min") : minutes >= 1440 ? "1 d" : "1 h";
    }

    /// <summary>The earlier of two times' dates; some files have the newest row first.</summary>
    private static DateOnly? Earliest(string pattern, params IEnumerable<string?> times) =>
        times.Select(text => text is not null && TryTime(text, pattern, out var time) ? DateOnly.FromDateTime(time) : (DateOnly?)null).Min();

    private static bool TryTime(string cell, string pattern, out DateTime time) =>
        DateTime.TryParseExact(cell, pattern, CultureInfo.InvariantCulture, DateTimeStyles.None, out time);

    private static string FilePattern(string path)
    {
        var name = System.IO.Path.GetFileNameWithoutExtension(path);
        var pattern = Regex.Replace(name, "[0-9][0-9._-]*", "*", Plainly);
        return (pattern.Contains('*', StringComparison.Ordinal) ? pattern : pattern + "*") + System.IO.Path.GetExtension(path);
    }

    private static List<string> Cells(string line, char delimiter) =>
        [.. line.TrimStart('\uFEFF').Split(delimiter).Select(cell => cell.Trim().Trim('"'))];
}
