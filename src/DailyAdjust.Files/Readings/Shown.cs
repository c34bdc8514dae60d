namespace DailyAdjust.Files.Readings;

/// <summary>How a piece of a file stands in a message.</summary>
internal static class Shown
{
    private const int Longest = 60;

    /// <summary>The text, cut where it is long.</summary>
    public static string Short(ReadOnlySpan<char> text) =>
        text.Length <= Longest ? text.ToString() : string.Concat(text[..Longest], "...");
}
