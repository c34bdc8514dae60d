using System.Text.RegularExpressions;

namespace DailyAdjust.Core.Logbook;

/// <summary>
/// Whether a note says that something is mended. Narrow on purpose: what is not clearly said goes on being asked about, since a program that is turned on with its
/// pipe open does more harm than one more question.
/// </summary>
internal static class MendedNote
{
    private const RegexOptions Plain = RegexOptions.CultureInvariant | RegexOptions.NonBacktracking;

    /// <summary>Signs and words that part a note: what is mended stands before one of them, or at the end.</summary>
    private static readonly Regex Parts = new(@"[,;.:!()\[\]""–—\r\n]|\s(and|&|\+|-)\s", Plain | RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture);

    /// <summary>A share of something.</summary>
    private static readonly Regex Share = new("[0-9]/[0-9]|%", Plain);

    private static readonly HashSet<string> Mended = Set("mended", "repaired", "fixed");

    /// <summary>Words that say nothing of what was done, or when in the past.</summary>
    private static readonly HashSet<string> Beside = Set("the", "a", "an", "is", "are", "was", "were", "has", "been", "now", "all", "today", "yesterday");

    /// <summary>Words that take it back, put it off, make it depend on something, say it of a part, or of which part is not sure.</summary>
    private static readonly HashSet<string> Otherwise = Set(
        "no", "not", "never", "nothing", "none", "cannot", "without", "half", "partly", "partially", "part", "parts", "some", "most", "mostly", "one", "of", "almost", "nearly", "badly", "poorly", "only",
        "temporarily", "temporary", "provisionally", "provisional", "makeshift", "maybe", "perhaps", "probably", "hopefully", "rest", "remain", "remains", "remaining", "other", "others", "another",
        "be", "being", "get", "gets", "getting", "have", "will", "shall", "should", "would", "could", "can", "must", "may", "might", "need", "needs", "want", "wants", "to", "try", "tried", "trying",
        "until", "till", "unless", "if", "when", "once", "before", "after", "soon", "next", "tomorrow", "yet", "still", "again", "but", "except", "where",
        "that", "which", "who", "i", "we", "you", "he", "she", "they", "just", "recently", "previously", "last");

    /// <summary>What is wrong with a thing: beside "mended" it is what was mended, anywhere else it is wrong now.</summary>
    private static readonly HashSet<string> Symptoms = Set(
        "leak", "leaks", "leaking", "leaky", "leaked", "drip", "drips", "dripping", "weeps", "weeping", "broken", "broke", "breaks", "burst", "bursts", "stuck", "sticks", "sticking", "jammed",
        "failed", "fails", "failing", "failure", "fault", "faulty", "cracked", "crack", "cracks", "blocked", "clogged", "plugged", "flooded", "flooding", "loose", "missing", "dead", "bad", "worse", "trouble", "problem");

    /// <summary>
    /// One of "mended", "repaired" and "fixed" ends a part of it; none of these words stands anywhere else (a "fixed spray head", a "repaired valve"), nor a question mark, a share, a word that takes
    /// it back, or a symptom that is not what was mended.
    /// </summary>
    public static bool Says(string note)
    {
        if (note.Contains('?', StringComparison.Ordinal) || Share.IsMatch(note))
        {
            return false;
        }

        var parts = Parts.Split(note).Select(Words).ToList();
        return parts.Exists(p => p.Exists(Mended.Contains)) && parts.TrueForAll(p => !p.Where((word, i) => TakesBack(word, p.ElementAtOrDefault(i + 1))).Any() && IsMendedOrSound(p));
    }

    private static bool IsMendedOrSound(List<string> part)
    {
        var words = part.Where(w => !Beside.Contains(w)).ToList();
        if (!words.Exists(Mended.Contains))
        {
            return !words.Exists(Symptoms.Contains);
        }

        // "Leak at green 4 fixed", "green 4 leak fixed"; of "head 3 broken head 4 fixed" nobody knows what was broken.
        var last = words.Count - 1;
        return words.FindIndex(Mended.Contains) == last && !words.Where((word, i) => i > 0 && i < last - 1 && Symptoms.Contains(word)).Any();
    }

    /// <summary>An apostrophe and a hyphen are part of their word: "isn't" and "won't" end in n't, "un-mended" is not mended.</summary>
    private static List<string> Words(string part) =>
        [.. new string([.. part.Select(c => char.IsLetterOrDigit(c) || c == '-' ? c : c is '\'' or '’' ? '\'' : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries)];

    /// <summary>"Still off" is how the program stands, not how the fault does.</summary>
    private static bool TakesBack(string word, string? next) =>
        (Otherwise.Contains(word) && !(Is(word, "still") && Is(next, "off"))) || word.EndsWith("n't", StringComparison.OrdinalIgnoreCase);

    private static bool Is(string? word, string other) => string.Equals(word, other, StringComparison.OrdinalIgnoreCase);

    private static HashSet<string> Set(params string[] words) => new(words, StringComparer.OrdinalIgnoreCase);
}
