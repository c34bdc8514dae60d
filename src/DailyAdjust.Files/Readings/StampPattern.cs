using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Readings;

/// <summary>The time of a row as the file writes it. The pattern is exact; 24:00 is the end of its date.</summary>
public sealed class StampPattern
{
    /// <summary>In place of a pattern: seconds since the beginning of 1970, UTC.</summary>
    public const string Epoch = "epoch";

    /// <summary>1980, UTC: smaller numbers are counts of something else.</summary>
    private const long LeastSeconds = 315_532_800;

    /// <summary>2200, UTC.</summary>
    private const long MostSeconds = 7_258_118_400;

    private const int Longest = 100;
    private const int EarliestYear = 1900;
    private const int LatestYear = 2199;

    /// <summary>UTC, so that a pattern with an offset never asks for the machine's own.</summary>
    private static readonly DateTime Sample = new(2026, 6, 21, 13, 45, 0, DateTimeKind.Utc);

    private readonly string _pattern;
    private readonly bool _twentyFour;
    private readonly bool _epoch;
    private readonly FixedPattern? _fixed;

    /// <exception cref="ArgumentException">The pattern has a <see cref="Fault"/>.</exception>
    public StampPattern(WeatherSource source)
    {
        if (Fault(source.Time.Pattern, source.IsDaily) is { } fault)
        {
            throw new ArgumentException(fault, nameof(source));
        }

        _pattern = source.Time.Pattern;
        _epoch = IsEpoch(_pattern);
        _fixed = FixedPattern.Of(_pattern);
        _twentyFour = _pattern.Contains("HH:mm", StringComparison.Ordinal);
    }

    /// <summary>A time as this pattern writes it, for a hint.</summary>
    public string Example => _epoch
        ? new DateTimeOffset(Sample).ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture)
        : Sample.ToString(_pattern, CultureInfo.InvariantCulture);

    /// <summary>Why a date pattern cannot tell one instant from another; null where it can.</summary>
    /// <param name="pattern">.NET date pattern.</param>
    /// <param name="daily">One row a day: a pattern without a time of day will do.</param>
    public static string? Fault(string pattern, bool daily)
    {
        if (IsEpoch(pattern))
        {
            return null;
        }

        var shown = Wording.Quote(pattern);
        var letters = Letters(pattern);
        if (!letters.Contains('y') || !letters.Contains('M') || !letters.Contains('d'))
        {
            return $"the date pattern {shown} must have year (yyyy), month (MM) and day (dd)";
        }

        if (!daily && !letters.Overlaps("Hh"))
        {
            return $"the date pattern {shown} must have the hour (HH, or hh with tt)";
        }

        if (letters.Contains('h') && !letters.Contains('t'))
        {
            return $"the date pattern {shown} has hours from 1 to 12 (h) and does not say which half of the day (tt): write HH for hours from 0 to 23";
        }

        if (!daily && letters.Contains(':') && !letters.Contains('m'))
        {
            return $"the date pattern {shown} has no minutes: they are mm, MM is the month";
        }

        return CanReadItself(pattern) ? null : $"the date pattern {shown} cannot be read";
    }

    /// <summary>Whether the pattern says more than a date.</summary>
    internal static bool HasTimeOfDay(string pattern) => IsEpoch(pattern) || Letters(pattern).Overlaps("Hh");

    /// <summary>The time on the clock that wrote it (unspecified), or UTC where the pattern has an offset and so has the text.</summary>
    public bool TryParse(ReadOnlySpan<char> date, ReadOnlySpan<char> timeOfDay, out DateTime stamp)
    {
        stamp = default;
        if (_fixed is { } fixedParts && timeOfDay.IsEmpty && fixedParts.TryParse(date, out stamp))
        {
            return stamp.Year is >= EarliestYear and <= LatestYear;
        }

        if (date.Length + timeOfDay.Length > Longest)
        {
            return false;
        }

        if (_epoch)
        {
            return timeOfDay.IsEmpty && Seconds(date, out stamp) && stamp.Year is >= EarliestYear and <= LatestYear;
        }

        Span<char> text = stackalloc char[Longest + 1];
        date.CopyTo(text);
        var length = date.Length;
        if (!timeOfDay.IsEmpty)
        {
            text[length] = ' ';
            timeOfDay.CopyTo(text[(length + 1)..]);
            length += 1 + timeOfDay.Length;
        }

        return (Exact(text[..length], out stamp) || EndOfDate(text[..length], out stamp))
            && stamp.Year is >= EarliestYear and <= LatestYear;
    }

    /// <summary>AdjustToUniversal: a text with an offset gives UTC, one without stays as written; the machine's own zone never counts.</summary>
    private bool Exact(ReadOnlySpan<char> text, out DateTime stamp) =>
        DateTime.TryParseExact(text, _pattern, CultureInfo.InvariantCulture, DateTimeStyles.AdjustToUniversal, out stamp);

    private bool EndOfDate(Span<char> text, out DateTime stamp)
    {
        stamp = default;
        var at = _twentyFour ? text.IndexOf("24:00") : -1;
        if (at < 0)
        {
            return false;
        }

        "00:00".CopyTo(text[at..]);
        if (!Exact(text, out stamp) || stamp.Year > LatestYear || (stamp.Kind == DateTimeKind.Unspecified && stamp.TimeOfDay != TimeSpan.Zero))
        {
            return false;
        }

        stamp = stamp.AddDays(1);
        return true;
    }

    private static bool IsEpoch(string pattern) => string.Equals(pattern, Epoch, StringComparison.OrdinalIgnoreCase);

    /// <summary>Whole seconds; some write them with a decimal point and zeros. Milliseconds give a year that no file is of.</summary>
    private static bool Seconds(ReadOnlySpan<char> text, out DateTime stamp)
    {
        stamp = default;
        var point = text.IndexOf('.');
        if (point >= 0 && text[(point + 1)..].ContainsAnyExcept('0'))
        {
            return false;
        }

        if (!long.TryParse(point >= 0 ? text[..point] : text, NumberStyles.None, CultureInfo.InvariantCulture, out var seconds)
            || seconds is < LeastSeconds or > MostSeconds)
        {
            return false;
        }

        stamp = DateTime.UnixEpoch.AddSeconds(seconds);
        return true;
    }

    private static HashSet<char> Letters(string pattern)
    {
        var letters = new HashSet<char>();
        var quote = '\0';
        for (var i = 0; i < pattern.Length; i++)
        {
            var c = pattern[i];
            if (quote != '\0')
            {
                quote = c == quote ? '\0' : quote;
            }
            else if (c is '\'' or '"')
            {
                quote = c;
            }
            else if (c == '\\')
            {
                i++;
            }
            else
            {
                letters.Add(c);
            }
        }

        return letters;
    }

    /// <summary>Cells are read without blanks at their ends, and none longer than a time is.</summary>
    private static bool CanReadItself(string pattern)
    {
        try
        {
            var text = Sample.ToString(pattern, CultureInfo.InvariantCulture);
            return text.Length <= Longest && text.Trim().Length == text.Length && DateTime.TryParseExact(text, pattern, CultureInfo.InvariantCulture, DateTimeStyles.AdjustToUniversal, out var back) && back.Date == Sample.Date;
        }
        catch (FormatException)
        {
            return false;
        }
    }
}
