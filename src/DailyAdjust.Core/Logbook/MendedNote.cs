namespace DailyAdjust.Core.Logbook;

/// <summary>
/// Whether a note says that something is mended. Narrow on purpose: what is not clearly said goes on being asked about, since a program that is turned on with its
/// pipe open does more harm than one more question.
/// </summary>
internal static class MendedNote
{
    private static readonly HashSet<string> Mended = new(["mended", "repaired", "fixed"], StringComparer.OrdinalIgnoreCase);

    /// <summary>Words that take it back, put it off or make it depend on something.</summary>
    private static readonly HashSet<string> Otherwise = new(
        [
            "no", "not", "never", "nothing", "none", "cannot", "without", "half", "partly", "almost", "nearly", "badly", "poorly", "only",
            "be", "being", "get", "gets", "getting", "will", "shall", "should", "would", "could", "can", "must", "may", "might", "need", "needs", "want", "wants", "to",
            "until", "till", "unless", "if", "when", "once", "before", "after", "soon", "next", "tomorrow", "yet", "still", "again", "but", "except",
        ],
        StringComparer.OrdinalIgnoreCase);

    /// <summary>One of "mended", "repaired" and "fixed" stands in it, no question mark, and no word that takes it back.</summary>
    public static bool Says(string note)
    {
        if (note.Contains('?', StringComparison.Ordinal))
        {
            return false;
        }

        // An apostrophe is part of its word: "isn't" and "won't" end in n't.
        var words = new string([.. note.Select(c => char.IsLetter(c) ? c : c is '\'' or '’' ? '\'' : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words.Any(Mended.Contains) && !words.Where((word, i) => TakesBack(word, words.ElementAtOrDefault(i + 1))).Any();
    }

    /// <summary>"Still off" is how the program stands, not how the fault does.</summary>
    private static bool TakesBack(string word, string? next) =>
        (Otherwise.Contains(word) && !(Is(word, "still") && Is(next, "off"))) || word.EndsWith("n't", StringComparison.OrdinalIgnoreCase);

    private static bool Is(string? word, string other) => string.Equals(word, other, StringComparison.OrdinalIgnoreCase);
}
