using System.Globalization;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Guess;

/// <summary>Which columns hold the time of a row, and the patterns that it can be written in.</summary>
/// <param name="Column">Cell of the time or date, from 0.</param>
/// <param name="TimeOfDay">Cell of the time of day where it stands apart; null = it does not.</param>
/// <param name="Patterns">All that can be meant by the form of the texts alone.</param>
/// <param name="Zone">What the texts say behind the time, see <see cref="TimeOfDayForm.Zone"/>.</param>
/// <param name="EndsAt24">24:00 stands among the times.</param>
internal sealed record TimeColumns(int Column, int? TimeOfDay, IReadOnlyList<string> Patterns, string Zone, bool EndsAt24)
{
    private const int RowsForForm = 2_000;

    /// <summary>The best column or pair of columns; null = none holds a time that the reader could read.</summary>
    public static TimeColumns? Find(TableShape shape)
    {
        var texts = Enumerable.Range(0, shape.Header.Count)
            .Select(i => (IReadOnlyList<string>)[.. shape.Rows.Take(RowsForForm).Where(row => i < row.Count && row[i].Length > 0).Select(row => row[i])]).ToList();
        var words = shape.Header.Select(header => new HeaderWords(header)).ToList();
        var order = Enumerable.Range(0, shape.Header.Count)
            .Where(i => shape.Header[i].Length > 0 && texts[i].Count > 0)
            .OrderByDescending(i => (TimeWords.AreIn(words[i]) ? 2 : 0) - (TimeWords.AreOfAnother(words[i]) ? 3 : 0)
                + (ClockWords.Of(shape.Header[i]) is not null ? 1 : 0))
            .ThenBy(i => i).ToList();
        return Together(order, texts)
            ?? Apart(order, texts, words)
            ?? Seconds(order, texts, words);
    }

    /// <summary>Date and time of day in one column.</summary>
    private static TimeColumns? Together(List<int> order, List<IReadOnlyList<string>> texts)
    {
        foreach (var i in order)
        {
            if (DateForm.Of(texts[i]) is not { } date)
            {
                continue;
            }

            var rests = texts[i].Where(text => date.Length(text) > 0).Select(text => text[date.Length(text)..]).ToList();
            var joint = rests.Find(rest => rest.Length > 0) is { } first ? Joint(first) : "";
            if (TimeOfDayForm.Of([.. rests.Select(rest => rest.StartsWith(joint, StringComparison.Ordinal) ? rest[joint.Length..] : "")]) is { } time)
            {
                return new(i, null, [.. date.Patterns.Select(pattern => pattern + Literal(joint) + time.After(pattern))], time.Zone, time.EndsAt24);
            }
        }

        return null;
    }

    /// <summary>A date column, with a time of day in another column where there is one.</summary>
    private static TimeColumns? Apart(List<int> order, List<IReadOnlyList<string>> texts, List<HeaderWords> words)
    {
        foreach (var i in order)
        {
            if (DateForm.Of(texts[i]) is not { } date || texts[i].Any(text => date.Length(text) != text.Length && date.Length(text) > 0))
            {
                continue;
            }

            foreach (var j in order.Where(j => j != i && TimeWords.AreIn(words[j]) && !TimeWords.AreOfAnother(words[j])))
            {
                if (TimeOfDayForm.Of(texts[j]) is { } time)
                {
                    return new(i, j, [.. date.Patterns.Select(pattern => $"{pattern} {time.After(pattern)}")], time.Zone, time.EndsAt24);
                }

                if (texts[j].All(text => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var hour) && hour is >= 0 and <= 23) && texts[j].Distinct(StringComparer.Ordinal).Skip(1).Any())
                {
                    return new(i, j, [.. date.Patterns.Select(pattern => $"{pattern} {DateForm.Letters('H', texts[j])}")], "", EndsAt24: false);
                }
            }

            return new(i, null, date.Patterns, "", EndsAt24: false);
        }

        return null;
    }

    private static TimeColumns? Seconds(List<int> order, List<IReadOnlyList<string>> texts, List<HeaderWords> words)
    {
        var found = order.FindIndex(i => TimeWords.AreIn(words[i]) && texts[i].All(IsSeconds));
        return found < 0 ? null : new(order[found], null, [StampPattern.Epoch], "Z", EndsAt24: false);
    }

    /// <summary>1990 to 2100, with or without ".0".</summary>
    private static bool IsSeconds(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var seconds) && seconds is >= 631_152_000 and <= 4_102_444_800;

    private static string Joint(string rest) => rest[..rest.TakeWhile(c => !char.IsAsciiDigit(c)).Count()];

    /// <summary>Letters of a pattern mean something, but T.</summary>
    private static string Literal(string joint) => joint is "" or "T" || !joint.Any(c => char.IsLetter(c) || c is '%' or '\\') ? joint : $"'{joint}'";
}
