using System.Globalization;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>`log round 2026-06-02..2026-06-07 done`: one entry for every round of those dates that asked for a walk and of which nobody has said anything, unless it is too long past.</summary>
internal static class RoundSpan
{
    private const string Between = "..";

    /// <summary>The same words for each of the rounds; any other words as they are.</summary>
    /// <exception cref="WrongInputException">The dates cannot be read, or no round between them is open.</exception>
    public static IReadOnlyList<LogWords> Each(OpenSite site, LogWords words, AnswerableSheets sheets)
    {
        if (words.Kind is not "round" || words.Words.Count == 0 || words.Words[0].Split(Between) is not [var first, var last])
        {
            return [words];
        }

        if (GlobalOptions.ReadDate(first) is not { } from || GlobalOptions.ReadDate(last) is not { } to || from > to)
        {
            throw new WrongInputException($"round {words.Words[0]} is no span of sheets.", "Write two dates, the earlier one first: log round 2026-06-02..2026-06-07 done");
        }

        var clock = site.Newest.Clock;
        var answered = site.Ledger.Logbook.Effective().Where(e => e.Sheet is not null).Select(e => (Date: e.Sheet!.Value, e.Issue)).ToHashSet();
        var open = new List<string>();
        foreach (var date in site.Ledger.Sheets.Issued(from, to).GroupBy(s => s.Date).OrderBy(g => g.Key))
        {
            // A later look of a date may have asked for a second round: each is told by its own sheet.
            var rounds = date.GroupBy(s => site.Newest.Report.IsAfterRound(clock, s.Date, s.AsOf)).Select(g => g.MaxBy(s => s.Issue)!).OrderBy(s => s.Issue).ToList();
            open.AddRange(rounds
                .Where(s => s.Lines.Any(l => l.Asks) && sheets.FaultOf(s.Date, s.Issue) is null && !answered.Contains((s.Date, s.Issue)) && !(ReferenceEquals(s, rounds[^1]) && answered.Contains((s.Date, null))))
                .Select(s => rounds.Count == 1 ? Written(s.Date) : string.Create(CultureInfo.InvariantCulture, $"{Written(s.Date)}/{s.Issue}")));
        }

        return open.Count > 0
            ? [.. open.Select(round => words with { Words = [round, .. words.Words.Skip(1)] })]
            : throw new WrongInputException($"No sheet of {first} to {last} asked for a round that is not answered.", "`dailyadjust advice` prints the newest sheet.");
    }

    private static string Written(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
