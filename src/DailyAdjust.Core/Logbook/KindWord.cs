namespace DailyAdjust.Core.Logbook;

/// <summary>Kinds of logbook entries as files and people spell them: lower case with hyphens.</summary>
public static class KindWord
{
    private static readonly Dictionary<LogKind, string> Words = Enum.GetValues<LogKind>().ToDictionary(kind => kind, Spell);

    /// <summary>All of them, in the order of <see cref="LogKind"/>.</summary>
    public static IReadOnlyList<string> All { get; } = [.. Enum.GetValues<LogKind>().Select(Of)];

    public static string Of(LogKind kind) => Words[kind];

    /// <summary>Upper and lower case make no difference; null = no such kind.</summary>
    public static LogKind? Find(string word)
    {
        foreach (var (kind, spelled) in Words)
        {
            if (string.Equals(spelled, word, StringComparison.OrdinalIgnoreCase))
            {
                return kind;
            }
        }

        return null;
    }

    private static string Spell(LogKind kind) =>
        string.Concat(kind.ToString().Select((c, i) => i > 0 && char.IsAsciiLetterUpper(c) ? "-" + char.ToLowerInvariant(c) : char.ToLowerInvariant(c).ToString()));
}
