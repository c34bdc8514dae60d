using DailyAdjust.Service.Commands;

namespace DailyAdjust.ServiceTests;

/// <summary>The whole command line without a process of its own: for the many small cases.</summary>
public static class InProcess
{
    public static ProgramResult Run(params string[] arguments) => Run(TimeProvider.System, arguments);

    public static ProgramResult Run(TimeProvider time, string[] arguments)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var code = CommandTree.RunAsync(arguments, output, error, time).GetAwaiter().GetResult();
        return new(code, output.ToString(), error.ToString());
    }
}
