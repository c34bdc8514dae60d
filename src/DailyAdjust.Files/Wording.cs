using System.Globalization;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files;

/// <summary>How problems quote what a file says, and what they suggest instead.</summary>
internal static class Wording
{
    private const int MostNamed = 40;
    private const int LongestList = 800;

    /// <summary>The text in quotation marks, cut where it is long.</summary>
    public static string Quote(string text) => $"\"{Shown.Short(text)}\"";

    /// <summary>"a and b and c"; of very many the first ones, and how many more.</summary>
    public static string AllOf(IReadOnlyList<string> words) =>
        string.Join(" and ", words.Take(MostNamed)) + (words.Count > MostNamed ? string.Create(CultureInfo.InvariantCulture, $" and {words.Count - MostNamed} more") : "");

    /// <summary>"a, b or c".</summary>
    public static string OneOf(IReadOnlyList<string> words) => words.Count < 2
        ? string.Concat(words)
        : string.Join(", ", words.Take(words.Count - 1)) + " or " + words[^1];

    /// <summary>Suggests the nearest known word, or else lists what is known.</summary>
    public static string DidYouMean(string word, IReadOnlyCollection<string> known, string knownHere)
    {
        if (Nearest(word, known) is { } nearest)
        {
            return $"did you mean {Quote(nearest)}?";
        }

        return known.Count == 0 ? $"there are no {knownHere}" : $"{knownHere}: {Listed(known)}";
    }

    /// <summary>"a, b, c"; of very many, or very long ones, the first.</summary>
    public static string Listed(IReadOnlyCollection<string> words) => Named(words, word => Shown.Short(word));

    /// <summary>The same in quotation marks, each.</summary>
    public static string Quoted(IReadOnlyCollection<string> words) => Named(words, Quote);

    /// <summary>The known word that a slip of the pen could have turned into this one; null when none is near.</summary>
    /// <param name="word">What stands there.</param>
    /// <param name="known">What could.</param>
    /// <param name="fits">Which of the near ones may be told, asked of these alone; null = each.</param>
    public static string? Nearest(string word, IEnumerable<string> known, Func<string, bool>? fits = null)
    {
        var allowed = Math.Max(1, Math.Min(word.Length, 40) / 3);
        var plain = Plain(word);
        return known
            .Select(k => (Word: k, Plain: Plain(k)))
            .Where(k => Math.Abs(k.Plain.Length - plain.Length) <= allowed)
            .Select(k => (k.Word, Distance: Distance(plain, k.Plain)))
            .Where(k => k.Distance <= allowed && (fits is null || fits(k.Word)))
            .OrderBy(k => k.Distance)
            .ThenBy(k => k.Word, StringComparer.Ordinal)
            .Select(k => k.Word)
            .FirstOrDefault();
    }

    /// <summary>A number as a person would write it.</summary>
    public static string Number(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    private static string Named(IReadOnlyCollection<string> words, Func<string, string> shown)
    {
        var letters = 0;
        List<string> named = [.. words.Take(MostNamed).Select(shown).TakeWhile(k => (letters += k.Length) <= LongestList)];
        return string.Join(", ", named) + (words.Count > named.Count ? ", ..." : "");
    }

    private static string Plain(string word) => word.Length > 100 ? word[..100] : word.ToLowerInvariant().Replace('-', '_').Replace(' ', '_');

    /// <summary>Letters to insert, drop, change or swap; both words are plain, and so short.</summary>
    private static int Distance(string a, string b)
    {
        var width = b.Length + 1;
        Span<int> d = stackalloc int[(a.Length + 1) * width];
        for (var i = 0; i <= a.Length; i++)
        {
            d[i * width] = i;
        }

        for (var j = 0; j <= b.Length; j++)
        {
            d[j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var at = (i * width) + j;
                var change = a[i - 1] == b[j - 1] ? 0 : 1;
                d[at] = Math.Min(Math.Min(d[at - width] + 1, d[at - 1] + 1), d[at - width - 1] + change);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    d[at] = Math.Min(d[at], d[at - (2 * width) - 2] + 1);
                }
            }
        }

        return d[^1];
    }
}
