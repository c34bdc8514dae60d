using System.Text.RegularExpressions;
using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>
/// What a person types as it stands (a command, a line of logbook.csv), marked inside a sentence: a page shows it as code, a terminal keeps it in one piece. The marks
/// are control characters, which no name or note has (files and `log` refuse them), and no report shows.
/// </summary>
internal static class Typed
{
    private const char Begins = '\u0002';
    private const char Ends = '\u0003';

    /// <summary>How notices of the program name a command of ours. What stands in quotation marks is quoted from a file, whose backticks are its own.</summary>
    private static readonly Regex InBackticks = new(
        "(?<quoted>\"[^\"]*\")|`(?<typed>(dailyadjust|log|explain) [^`]+)`", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking);

    public static Phrase Mark(string typed) => Phrase.Verbatim(Marked(typed));

    /// <summary>Words that are to stay in one piece.</summary>
    public static Phrase InOnePiece(Phrase words) => words.Shaped(Marked);

    /// <summary>A notice of the program, its commands in backticks marked. Not for a sentence that holds what a person wrote: a note may say `dailyadjust check` too.</summary>
    public static string MarkCommands(string notice) =>
        InBackticks.Replace(notice, match => match.Groups["typed"] is { Success: true } typed ? Marked(typed.Value) : match.Value);

    /// <summary>A reason, the one word in it that is to be logged marked; whatever backticks a note has stay its own.</summary>
    public static Phrase MarkAnswer(Phrase reason) => reason.Replace(Reason.Checked, Mark("checked"));

    private static string Marked(string typed) => Begins + typed + Ends;

    /// <summary>A sentence in pieces, without the marks; put together they are the sentence.</summary>
    public static IEnumerable<(string Text, bool IsTyped)> Pieces(string sentence)
    {
        var at = 0;
        while (sentence.IndexOf(Begins, at) is var begin and >= 0 && sentence.IndexOf(Ends, begin) is var end and >= 0)
        {
            if (begin > at)
            {
                yield return (sentence[at..begin], false);
            }

            yield return (sentence[(begin + 1)..end], true);
            at = end + 1;
        }

        if (at < sentence.Length)
        {
            yield return (sentence[at..], false);
        }
    }
}
