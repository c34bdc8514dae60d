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

    /// <summary>How sentences name a command of ours that do not come from the report. What stands in quotation marks is somebody's note, whose backticks are its own.</summary>
    private static readonly Regex InBackticks = new(
        "(?<quoted>\"[^\"]*\")|`(?<typed>(dailyadjust|log|explain) [^`]+|checked)`", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking);

    public static string Mark(string typed) => Begins + typed + Ends;

    /// <summary>The pieces for a page, where a command of ours in backticks is code too.</summary>
    public static IEnumerable<(string Text, bool IsTyped)> PiecesOfPage(string sentence) =>
        Pieces(InBackticks.Replace(sentence, match => match.Groups["typed"] is { Success: true } typed ? Mark(typed.Value) : match.Value));

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
