using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Json;

/// <summary>How numbers, times and dates stand in JSON.</summary>
internal static class JsonWriting
{
    /// <summary>Six decimals are more than anybody measures, and keep 0.1 + 0.2 readable; adding 0 turns -0 into 0.</summary>
    public static double Number(double value) => Math.Round(value, 6) + 0.0;

    public static double? Number(double? value) => value is { } v ? Number(v) : null;

    /// <summary>On the site's clock.</summary>
    public static string Local(DateTimeOffset instant, SiteClock clock) => CodeWords.Minute(clock.ToLocal(instant));

    public static string? Local(DateTimeOffset? instant, SiteClock clock) => instant is { } i ? Local(i, clock) : null;

    /// <summary>A date, or date and time of day.</summary>
    public static string Time(LogTime time) => CodeWords.Date(time.Date) + (time.Clock is { } clock ? "T" + SiteWords.Clock(clock) : "");

    public static string? Date(DateOnly? date) => date is { } d ? CodeWords.Date(d) : null;
}
