using System.Text.Json;

namespace DailyAdjust.Ledger.Json;

/// <summary>A case of an enumeration as a word in lower case with hyphens: part-estimated.</summary>
internal static class Words
{
    public static string Of<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());

    /// <exception cref="JsonException">No such word.</exception>
    public static T To<T>(string word)
        where T : struct, Enum
    {
        foreach (var value in Enum.GetValues<T>())
        {
            if (string.Equals(Of(value), word, StringComparison.Ordinal))
            {
                return value;
            }
        }

        throw new JsonException($"\"{word}\" is no {typeof(T).Name}.");
    }
}
