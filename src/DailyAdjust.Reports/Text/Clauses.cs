namespace DailyAdjust.Reports.Text;

/// <summary>Ever less of a text, each time ended where a sentence or a part of one ends: what is left still says something.</summary>
internal static class Clauses
{
    private const string Signs = ".;:";
    private const string Opens = "(";
    private const string Closes = ")";

    /// <summary>The text, then all that stand before an end of a part of it, the longest first. Nothing is torn that stands in quotation marks or brackets.</summary>
    public static IEnumerable<string> Of(string text) => Enumerable.Reverse(Ends(text)).Select(end => text[..end] + ".").Prepend(text);

    /// <summary>The longest part of a text of at most so many letters that ends where a sentence or a part of one does, without its sign; null = there is none.</summary>
    public static string? Longest(string text, int most) => Ends(text).FindLast(end => end <= most) is var end and > 0 ? text[..end] : null;

    private static List<int> Ends(string text)
    {
        var ends = new List<int>();
        var depth = 0;
        var isQuoted = false;
        for (var i = 0; i < text.Length - 1; i++)
        {
            isQuoted ^= text[i] == '"';
            depth += Opens.Contains(text[i]) ? 1 : Closes.Contains(text[i]) ? -1 : 0;
            if (i > 0 && !isQuoted && depth <= 0 && Signs.Contains(text[i]) && text[i + 1] == ' ')
            {
                ends.Add(i);
            }
        }

        return ends;
    }
}
