using System.Globalization;
using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Files.Logbook;

/// <summary>Times in files: 2026-06-05 10:30, with T or seconds as well, or a bare date.</summary>
public static class LogTimeText
{
    private static readonly string[] Forms =
        ["yyyy-MM-dd HH:mm", "yyyy-MM-dd H:mm", "yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd HH:mm:ss", "yyyy-MM-dd'T'HH:mm:ss"];

    public static bool TryParse(string text, out LogTime time)
    {
        var trimmed = text.Trim();
        if (TryParseDate(trimmed, out var date))
        {
            time = new(date, null);
            return true;
        }

        if (DateTime.TryParseExact(trimmed, Forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var both) && IsSensible(both.Year))
        {
            time = new(DateOnly.FromDateTime(both), TimeOnly.FromDateTime(both));
            return true;
        }

        time = default;
        return false;
    }

    public static bool TryParseDate(string text, out DateOnly date) =>
        DateOnly.TryParseExact(text.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out date) && IsSensible(date.Year);

    private static bool IsSensible(int year) => year is >= 1900 and <= 2199;
}
