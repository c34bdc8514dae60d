namespace DailyAdjust.Service.Setup;

/// <summary>
/// Asks questions line by line. On a terminal a wrong answer is asked for again; piped answers are taken once, because
/// asking again would put every later answer to the wrong question.
/// </summary>
/// <param name="input">Answers; null = take the proposals.</param>
/// <param name="output">Questions.</param>
/// <param name="askAgain">Somebody sits there.</param>
public sealed class Interview(TextReader? input, TextWriter output, bool askAgain)
{
    /// <summary>Reads one answer.</summary>
    public delegate (T Value, string? Wrong) Reader<T>(string answer);

    public void Say(string text) => output.WriteLine(text);

    /// <param name="question">Without a question mark's worth of knowledge: plain words.</param>
    /// <param name="proposal">Taken for an empty answer; null = there is none.</param>
    /// <param name="read">Turns the answer into a value, or says what is wrong with it.</param>
    /// <exception cref="WrongInputException">A piped answer is wrong, or there is none and no proposal.</exception>
    public T Ask<T>(string question, string? proposal, Reader<T> read)
    {
        while (true)
        {
            output.Write(proposal is null or "" ? $"{question}: " : $"{question} [{proposal}]: ");
            var given = input?.ReadLine();
            if (!askAgain)
            {
                output.WriteLine(given);
            }

            var answer = string.IsNullOrWhiteSpace(given) ? proposal : given.Trim();
            if (answer is null && given is null)
            {
                throw new WrongInputException($"No answer to: {question}.", "It has no proposal that could be taken instead.");
            }

            var (value, wrong) = answer is null ? (default!, "it needs an answer") : read(answer);
            if (wrong is null)
            {
                return value;
            }

            if (!askAgain || given is null)
            {
                throw new WrongInputException($"{question}: \"{answer}\": {wrong}.");
            }

            output.WriteLine($"  {wrong}.");
        }
    }

    /// <summary>Any text.</summary>
    public string AskText(string question, string? proposal) => Ask(question, proposal, answer => (answer, (string?)null));
}
