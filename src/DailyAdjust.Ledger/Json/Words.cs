using System.Text.Json;

namespace DailyAdjust.Ledger.Json;

/// <summary>A case of an enumeration as a word in lower case with hyphens: part-estimated.</summary>
internal static class Words
{
    public static string Of<T>(T value)
        where T : struct, Enum => Table<T>.ToWord[value];

    /// <exception cref="JsonException">No such word.</exception>
    public static T To<T>(string word)
        where T : struct, Enum =>
        Table<T>.ToValue.TryGetValue(word, out var value) ? value : throw new JsonException($"\"{word}\" is no {typeof(T).Name}.");

    // Made once: years of sheets hold hundreds of thousands of these words.
    private static class Table<T>
        where T : struct, Enum
    {
        public static readonly Dictionary<T, string> ToWord =
            Enum.GetValues<T>().ToDictionary(v => v, v => JsonNamingPolicy.KebabCaseLower.ConvertName(v.ToString()));

        public static readonly Dictionary<string, T> ToValue = ToWord.ToDictionary(p => p.Value, p => p.Key, StringComparer.Ordinal);
    }
}
