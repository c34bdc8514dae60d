using DailyAdjust.Files;

namespace DailyAdjust.Fuzz.Checks;

/// <summary>What is told of a file names a place inside it, and can be read by a person.</summary>
internal static class Places
{
    private const int LongestTold = 2_000;

    private static readonly char[] Ends = ['\n', '\r'];
    private static readonly char[] YamlEnds = ['\n', '\r', '\u2028', '\u2029', '\u0085'];

    /// <param name="problems">Of this file alone.</param>
    /// <param name="file">Its name.</param>
    /// <param name="text">Its text.</param>
    /// <param name="isYaml">Lines end as in YAML.</param>
    /// <param name="isJson">Lines end with a line feed alone.</param>
    public static void Check(IEnumerable<Problem> problems, string file, string text, bool isYaml = false, bool isJson = false)
    {
        List<string>? lines = null;
        var longestLine = 0;
        foreach (var problem in problems)
        {
            if (lines is null)
            {
                lines = Lines(text, isYaml ? YamlEnds : isJson ? ['\n'] : Ends);
                longestLine = lines.Max(l => l.Length);
            }

            Hold.That(string.Equals(problem.File, file, StringComparison.Ordinal), $"a problem of {problem.File} is told of {file}");
            Hold.That(problem.Line >= 1 && problem.Line <= lines.Count, $"line {problem.Line} of {lines.Count}: {problem.What}");
            var line = lines[problem.Line - 1];

            // Of a table the column is a cell: one that the row lacks stands below the header's, and one in quotation marks may go on in lines below.
            var longest = line.Contains('"', StringComparison.Ordinal) && !isYaml ? text.Length : isYaml || isJson ? line.Length : longestLine;
            Hold.That(problem.Column >= 1 && problem.Column <= longest + 1, $"column {problem.Column} of {longest} in line {problem.Line}: {problem.What}");
            Hold.That(!string.IsNullOrWhiteSpace(problem.What), "a problem says nothing");
            Hold.That(problem.ToString() is { Length: <= LongestTold } told && !told.Any(char.IsControl), $"{problem.ToString().Length} characters are told of one place: {problem.What[..Math.Min(200, problem.What.Length)]}");
        }
    }

    private static List<string> Lines(string text, char[] ends)
    {
        var lines = new List<string>();
        var begin = 0;
        while (text.AsSpan(begin).IndexOfAny(ends) is var end and >= 0)
        {
            lines.Add(text.Substring(begin, end));
            begin += end + (text.AsSpan(begin + end) is ['\r', '\n', ..] && ends.Contains('\r') ? 2 : 1);
        }

        lines.Add(text[begin..]);
        return lines;
    }
}
