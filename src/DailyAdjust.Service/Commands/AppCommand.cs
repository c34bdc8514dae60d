using System.CommandLine;

namespace DailyAdjust.Service.Commands;

/// <summary>A command whose help ends with examples.</summary>
/// <param name="name">As it is typed.</param>
/// <param name="summary">One sentence for the list of commands.</param>
/// <param name="more">What a newcomer should know beyond it; may be empty.</param>
/// <param name="examples">Command lines without the program's name.</param>
internal sealed class AppCommand(string name, string summary, string more, params string[] examples) : Command(name, summary)
{
    public string More { get; } = more;

    public IReadOnlyList<string> Examples { get; } = examples;
}
