using System.Globalization;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>`log round 2026-06-02..2026-06-07 done`: one entry for every sheet of those dates that asked for a walk.</summary>
internal static class RoundSpan
{
    private const string Between = "..";

    /// <summary>The same words for each of the sheets; any other words as they are.</summary>
    /// <exception cref="WrongInputException">The dates cannot be read, or no sheet between them asked for anything.</exception>
    public static IReadOnlyList<LogWords> Each(OpenSite site, LogWords words)
    {
        if (words.Kind is not "round" || words.Words.Count == 0 || words.Words[0].Split(Between) is not [var first, var last])
        {
            return [words];
        }

        if (!TryRead(first, out var from) || !TryRead(last, out var to) || from > to)
        {
            throw new WrongInputException($"round {words.Words[0]} is no span of sheets.", "Write two dates, the earlier one first: log round 2026-06-02..2026-06-07 done");
        }

        var asked = site.Ledger.Sheets.Issued(from, to).Where(s => s.Lines.Any(l => l.Asks)).Select(s => s.Date).Distinct().Order().ToList();
        return asked.Count > 0
            ? [.. asked.Select(date => words with { Words = [date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), .. words.Words.Skip(1)] })]
            : throw new WrongInputException($"No sheet of {first} to {last} asked for a round.", "`dailyadjust advice` prints the newest sheet.");
    }

    private static bool TryRead(string text, out DateOnly date) => DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out date);
}
