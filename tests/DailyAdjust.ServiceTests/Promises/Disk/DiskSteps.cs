using System.Globalization;

namespace DailyAdjust.ServiceTests.Promises.Disk;

/// <summary>
/// Counts what the program asks of the disk below one home, and kills it, or lets the disk fail, at one of those steps: a library that is preloaded into the real program
/// (steps.c says how), so that the program itself has no switch for it.
/// </summary>
internal static class DiskSteps
{
    private static readonly Lazy<string> Library = new(Compile);

    /// <summary>The environment that counts, and sets the process's own clock.</summary>
    /// <param name="home">What lies below it is counted.</param>
    /// <param name="clock">What the process's clock says when it begins.</param>
    /// <param name="log">Takes a line per step.</param>
    public static Dictionary<string, string> Variables(string home, DateTimeOffset clock, string? log = null)
    {
        var variables = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["LD_PRELOAD"] = Library.Value,
            ["STEPS_UNDER"] = home,
            ["STEPS_CLOCK"] = clock.ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture),
        };
        if (log is not null)
        {
            variables["STEPS_LOG"] = log;
        }

        return variables;
    }

    /// <summary>Kills the process before this step, as a power cut would.</summary>
    public static Dictionary<string, string> KillAt(this Dictionary<string, string> variables, int step)
    {
        variables["STEPS_AT"] = step.ToString(CultureInfo.InvariantCulture);
        return variables;
    }

    /// <summary>Lets this step end with an error, and every later one that writes.</summary>
    /// <param name="variables">The environment.</param>
    /// <param name="step">Its number.</param>
    /// <param name="error">The errno.</param>
    public static Dictionary<string, string> FailAt(this Dictionary<string, string> variables, int step, int error)
    {
        variables.KillAt(step)["STEPS_ERROR"] = error.ToString(CultureInfo.InvariantCulture);
        return variables;
    }

    private static string Compile()
    {
        Tool.Need("gcc");
        return NativeShim.Compile("steps", File.ReadAllText(Path.Combine(Repository.Root, "tests", "DailyAdjust.ServiceTests", "Promises", "Disk", "steps.c")));
    }
}
