namespace DailyAdjust.Tests.Files.Formats;

/// <summary>Lines of GHCN-Daily, written from the publisher's notes on columns.</summary>
internal static class GhcnText
{
    public const string Yard = "USC00111111";
    public const string Other = "USC00222222";

    /// <summary>A month of one element: days that are not named are missing.</summary>
    /// <param name="month">"202606".</param>
    /// <param name="days">Day to number and three flags: "289   7" is 28.9 with source flag 7.</param>
    public static string Month(string element, string month, Dictionary<int, string> days, string station = Yard) =>
        station + month + element + string.Concat(Enumerable.Range(1, 31).Select(day => days.TryGetValue(day, out var value)
            ? value[..^3].PadLeft(5) + value[^3..]
            : "-9999   "));
}
