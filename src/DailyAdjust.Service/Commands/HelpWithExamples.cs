using System.CommandLine;
using System.CommandLine.Invocation;

namespace DailyAdjust.Service.Commands;

/// <summary>The usual help, followed by what a newcomer should know and by examples.</summary>
internal sealed class HelpWithExamples(SynchronousCommandLineAction usual) : SynchronousCommandLineAction
{
    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        var result = usual.Invoke(parseResult);
        var output = parseResult.InvocationConfiguration.Output;
        if (parseResult.CommandResult.Command is AppCommand command)
        {
            if (command.More.Length > 0)
            {
                output.WriteLine(command.More);
                output.WriteLine();
            }

            output.WriteLine(command.Examples.Count == 1 ? "Example:" : "Examples:");
            foreach (var example in command.Examples)
            {
                output.WriteLine($"  dailyadjust {example}");
            }
        }
        else
        {
            output.WriteLine("First time here? `dailyadjust demo` shows a whole season; `dailyadjust new` sets up a course of your own.");
            output.WriteLine("Exit codes: 0 done, 1 failed, 2 wrong input. `dailyadjust COMMAND --help` shows examples.");
        }

        return result;
    }
}
