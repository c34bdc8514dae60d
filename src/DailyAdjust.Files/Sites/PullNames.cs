using System.Globalization;
using System.Text;

namespace DailyAdjust.Files.Sites;

/// <summary>Dates in braces within an address or a file name: "yard-{yyyyMMdd}.csv".</summary>
public static class PullNames
{
    /// <summary>Whether the text changes from day to day.</summary>
    public static bool HasDate(string text) => text.Contains('{', StringComparison.Ordinal);

    /// <summary>The text with a date in place of every pair of braces.</summary>
    /// <param name="text">Without a <see cref="Fault"/>.</param>
    /// <param name="date">On the site's calendar.</param>
    public static string Fill(string text, DateOnly date)
    {
        var filled = new StringBuilder(text.Length + 8);
        for (var i = 0; i < text.Length; i++)
        {
            var end = text[i] == '{' ? text.IndexOf('}', i) : -1;
            if (end < 0)
            {
                filled.Append(text[i]);
                continue;
            }

            filled.Append(Written(text[(i + 1)..end], date));
            i = end;
        }

        return filled.ToString();
    }

    /// <summary>Why a text cannot be filled; null where it can.</summary>
    public static string? Fault(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '}')
            {
                return "a brace is closed that was not opened";
            }

            if (text[i] != '{')
            {
                continue;
            }

            var end = text.IndexOf('}', i);
            if (end < 0)
            {
                return "a brace is not closed";
            }

            var pattern = text[(i + 1)..end];
            if (pattern.Length == 0 || pattern.Trim("yMd-_./".ToCharArray()).Length > 0 || !pattern.AsSpan().ContainsAny("yMd"))
            {
                return $"\"{{{pattern}}}\" is not a date";
            }

            i = end;
        }

        return null;
    }

    // A single letter would be one of .NET's standard patterns.
    private static string Written(string pattern, DateOnly date) =>
        date.ToString(pattern.Length == 1 ? "%" + pattern : pattern, CultureInfo.InvariantCulture);
}
