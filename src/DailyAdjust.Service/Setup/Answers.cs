using System.Globalization;
using DailyAdjust.Service.Commands;

namespace DailyAdjust.Service.Setup;

/// <summary>Turns typed answers into values; the second part says what is wrong with one.</summary>
internal static class Answers
{
    private static readonly string[] Weekdays = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];

    public static (double, string?) Number(string answer, double least, double most, string example) =>
        double.TryParse(answer, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most
            ? (value, null)
            : (0, FormattableString.Invariant($"a number from {least} to {most}, with a decimal point, such as {example}"));

    public static (int, string?) Count(string answer, int most) =>
        int.TryParse(answer, NumberStyles.None, CultureInfo.InvariantCulture, out var value) && value >= 1 && value <= most
            ? (value, null)
            : (0, FormattableString.Invariant($"a whole number from 1 to {most}"));

    public static (DateOnly, string?) Date(string answer) =>
        GlobalOptions.ReadDate(answer) is { } date ? (date, null) : (default, "a date such as 2026-06-01");

    public static (string, string?) OneOf(string answer, params string[] words) =>
        Array.Find(words, word => string.Equals(word, answer, StringComparison.OrdinalIgnoreCase)) is { } found
            ? (found, null)
            : ("", $"one of {string.Join(", ", words)}");

    public static (string, string?) TimeZone(string answer) =>
        TimeZoneInfo.TryFindSystemTimeZoneById(answer, out var zone) && zone.HasIanaId
            ? (zone.Id, null)
            : ("", "a time zone by its name, such as America/Chicago");

    /// <summary>"21:30 04:00" as ascending HH:mm.</summary>
    public static (IReadOnlyList<string>, string?) Starts(string answer)
    {
        var words = Words(answer);
        var times = new List<TimeOnly>();
        foreach (var word in words)
        {
            if (!TimeOnly.TryParseExact(word, ["HH:mm", "H:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var time))
            {
                return ([], $"\"{word}\" is not a time of day; write 21:30, several with blanks between");
            }

            times.Add(time);
        }

        return times.Count == 0
            ? ([], "at least one start, such as 21:30")
            : ([.. times.Distinct().Order().Select(t => t.ToString("HH:mm", CultureInfo.InvariantCulture))], null);
    }

    /// <summary>Water days as site.yaml writes them.</summary>
    public static (string, string?) Days(string answer, DateOnly from)
    {
        var words = Words(answer.ToLowerInvariant());
        if (words is ["odd"] or ["even"])
        {
            return (words[0], null);
        }

        if (words is ["every", "day"])
        {
            return ("every day", null);
        }

        if (words is ["every", var n] && int.TryParse(n, NumberStyles.None, CultureInfo.InvariantCulture, out var every) && every is >= 1 and <= 31)
        {
            return (FormattableString.Invariant($"{{ every: {every}, from: {from:yyyy-MM-dd} }}"), null);
        }

        return words.Length > 0 && Array.TrueForAll(words, word => Array.IndexOf(Weekdays, word) >= 0)
            ? ($"[{string.Join(", ", words)}]", null)
            : ("", "every day, odd, even, every 3 (days), or weekdays such as mon wed fri");
    }

    /// <summary>"1-6 greens 12; 7 tees 10": stations, area, minutes.</summary>
    public static (IReadOnlyList<StationAnswer>, string?) Stations(string answer)
    {
        var stations = new List<StationAnswer>();
        foreach (var group in answer.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var words = Words(group);
            if (words.Length != 3
                || Range(words[0]) is not { } range
                || !double.TryParse(words[2], NumberStyles.Float, CultureInfo.InvariantCulture, out var minutes)
                || minutes is <= 0 or > 600)
            {
                return ([], $"\"{group}\": write stations, area and minutes, such as 1-6 greens 12; 7 tees 10");
            }

            stations.AddRange(Enumerable.Range(range.First, range.Last - range.First + 1)
                .Select(number => new StationAnswer(number, words[1].ToLowerInvariant(), minutes)));
        }

        return stations.Count == 0 ? ([], "at least one station, such as 1-6 greens 12") : (stations, null);
    }

    private static (int First, int Last)? Range(string word)
    {
        var ends = word.Split('-');
        return ends.Length <= 2
            && int.TryParse(ends[0], NumberStyles.None, CultureInfo.InvariantCulture, out var first)
            && int.TryParse(ends[^1], NumberStyles.None, CultureInfo.InvariantCulture, out var last)
            && first >= 1 && last >= first && last <= 999
            ? (first, last)
            : null;
    }

    private static string[] Words(string text) =>
        text.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
