using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>The time of an observation in GHCN-Daily, HHMM: empty where it is not known, 2400 for the day's end.</summary>
internal static class GhcnTime
{
    public const string Hint = "The row is not used; observed_at: in the site says it for the whole station";

    /// <summary>False = it is no time, or 0000, which may be meant for either end of its date.</summary>
    public static bool TryRead(ReadOnlySpan<char> text, out TimeOnly? time)
    {
        time = null;
        if (text.IsEmpty)
        {
            return true;
        }

        if (text.Length != 4 || !FormatText.IsDigits(text) || !FormatText.TryWhole(text, out var number))
        {
            return false;
        }

        if (number == 2400)
        {
            time = new TimeOnly(23, 59);
            return true;
        }

        var (hour, minute) = (number / 100, number % 100);
        if (number == 0 || hour > 23 || minute > 59)
        {
            return false;
        }

        time = new TimeOnly(hour, minute);
        return true;
    }

    public static string What(ReadOnlySpan<char> text) => text.SequenceEqual("0000")
        ? "0000 may be the beginning of the date or its end"
        : $"\"{Shown.Short(text)}\" is not a time of observation as 0700";
}
