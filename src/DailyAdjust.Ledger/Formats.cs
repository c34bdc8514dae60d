using System.Globalization;
using System.Security.Cryptography;
using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Ledger;

/// <summary>How dates, instants and hashes stand in the tables.</summary>
internal static class Formats
{
    private const string Day = "yyyy-MM-dd";
    private const string Clock = "HH:mm:ss.FFFFFFF";
    private const string Instant = "yyyy-MM-dd'T'HH:mm:ss.FFFFFFF'Z'";

    public static string OfDay(DateOnly day) => day.ToString(Day, CultureInfo.InvariantCulture);

    public static DateOnly ToDay(string text) => DateOnly.ParseExact(text, Day, CultureInfo.InvariantCulture);

    public static string OfInstant(DateTimeOffset instant) => instant.UtcDateTime.ToString(Instant, CultureInfo.InvariantCulture);

    public static DateTimeOffset ToInstant(string text) => DateTimeOffset.ParseExact(
        text, Instant, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal);

    public static string OfLogTime(LogTime time) =>
        time.Clock is { } clock ? OfDay(time.Date) + "T" + clock.ToString(Clock, CultureInfo.InvariantCulture) : OfDay(time.Date);

    public static string Sha(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}
