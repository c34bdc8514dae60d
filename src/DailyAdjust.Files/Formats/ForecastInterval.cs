using System.Globalization;
using System.Text.RegularExpressions;

namespace DailyAdjust.Files.Formats;

/// <summary>The whole hours that a forecast value holds for, UTC.</summary>
internal readonly partial record struct ForecastInterval(DateTimeOffset Begin, int Hours)
{
    /// <summary>No value of a forecast holds for longer, hours.</summary>
    private const int Longest = 14 * 24;

    public DateTimeOffset End => Begin.AddHours(Hours);

    /// <summary>"2026-06-08T06:00:00+00:00/PT3H": a start and a duration (ISO 8601); null = it is no such text, or not of whole hours.</summary>
    public static ForecastInterval? Read(string text)
    {
        var slash = text.IndexOf('/', StringComparison.Ordinal);
        if (slash < 0 || Instant(text[..slash]) is not { } begin || HoursOf(text[(slash + 1)..]) is not { } hours)
        {
            return null;
        }

        var isWhole = begin.UtcTicks % TimeSpan.TicksPerHour == 0 && begin.Year is >= DayWindow.EarliestYear and <= DayWindow.LatestYear;
        return isWhole && hours is > 0 and <= Longest ? new(begin, hours) : null;
    }

    /// <summary>A time with its offset, as UTC; null = it is none.</summary>
    public static DateTimeOffset? Instant(string text) =>
        DateTimeOffset.TryParseExact(
            text,
            ["yyyy-MM-dd'T'HH:mm:sszzz", "yyyy-MM-dd'T'HH:mm:ss'Z'", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFzzz", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFF'Z'"],
            CultureInfo.InvariantCulture,
            DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal,
            out var instant) ? instant : null;

    private static int? HoursOf(string duration)
    {
        var match = Duration().Match(duration);
        return match.Success && duration.Length > 1 ? (Part(match, "days") * 24) + Part(match, "hours") : null;
    }

    private static int Part(Match match, string group) =>
        match.Groups[group].Success ? int.Parse(match.Groups[group].ValueSpan, CultureInfo.InvariantCulture) : 0;

    [GeneratedRegex("^P((?<days>[0-9]{1,3})D)?(T(?<hours>[0-9]{1,3})H)?$", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Duration();
}
