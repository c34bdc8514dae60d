using System.Globalization;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Rounds;

/// <summary>Why an answer is not taken: the same words for a row of round.csv, a line of the logbook and `log round`.</summary>
/// <param name="What">What is wrong, without a full stop.</param>
/// <param name="Hint">What to do, without a full stop.</param>
public sealed record SheetFault(string What, string Hint)
{
    private const string SayWhatStands = "`log setting C1/P2 90` says what stands on a dial";

    /// <returns>Null = the sheet can be answered.</returns>
    public static SheetFault? Of(AnswerableSheets sheets, DateOnly date, int? issue, ProgramKey? program = null) => sheets.FaultOf(date, issue, program) switch
    {
        null => null,
        AnswerFault.NoSheet => new($"no sheet of {Date(date)} was issued, so its round says nothing", $"`dailyadjust advice` prints the newest sheet; {SayWhatStands}"),
        AnswerFault.NoIssue => new(
            FormattableString.Invariant($"the sheet of {Date(date)} has no issue {issue}, so its round says nothing"),
            sheets.IssuesOf(date) is { Count: 1 } only ? $"there is {Id(date, only[0])}; a date alone means the newest" : $"there are {string.Join(", ", sheets.IssuesOf(date).Select(i => Id(date, i)))}; a date alone means the newest"),
        _ => new(
            FormattableString.Invariant($"the sheet of {Date(date)} is more than {AnswerableSheets.Days} days older than the newest of {Date(sheets.Newest!.Value)}, and nothing of it is asked for any more, so its round is not taken"),
            $"{SayWhatStands}, with --time since when; answer the newest sheet"),
    };

    private static string Id(DateOnly date, int issue) => FormattableString.Invariant($"{Date(date)}/{issue}");

    private static string Date(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
