using System.Text.RegularExpressions;

namespace DailyAdjust.Reports.Words;

/// <summary>
/// What a person types as it stands (a command, a line of logbook.csv), marked inside a sentence: a page shows it as code, a terminal keeps it in one piece. The marks
/// are control characters, which no name or note has (files and `log` refuse them), and no report shows.
/// </summary>
internal static class Typed
{
    private const char Begins = '\u0002';
    private const char Ends = '\u0003';

    /// <summary>How a reason that asks about a noted fault ends; what was noted stands before it.</summary>
    private const string HandsBack = "? A setting, or `checked` of ";

    /// <summary>How notices of the program name a command of ours. What stands in quotation marks is quoted from a file, whose backticks are its own.</summary>
    private static readonly Regex InBackticks = new(
        "(?<quoted>\"[^\"]*\")|`(?<typed>(dailyadjust|log|explain) [^`]+)`", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking);

    public static string Mark(string typed) => Begins + typed + Ends;

    /// <summary>A notice of the program, its commands in backticks marked. Not for a sentence that holds what a person wrote: a note may say `dailyadjust check` too.</summary>
    public static string MarkCommands(string notice) =>
        InBackticks.Replace(notice, match => match.Groups["typed"] is { Success: true } typed ? Mark(typed.Value) : match.Value);

    /// <summary>A reason, the one word in it that is to be logged marked; whatever backticks a note has stay its own.</summary>
    public static string MarkAnswer(string reason)
    {
        var at = reason.LastIndexOf(HandsBack, StringComparison.Ordinal);
        return at < 0 ? reason : reason[..at] + HandsBack.Replace("`checked`", Mark("checked"), StringComparison.Ordinal) + reason[(at + HandsBack.Length)..];
    }

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
