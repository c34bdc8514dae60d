namespace DailyAdjust.Tests.Plain;

internal static class PlainText
{
    /// <summary>Names are the same when their characters are.</summary>
    public static bool Is(this string a, string b) => string.Equals(a, b, StringComparison.Ordinal);
}
