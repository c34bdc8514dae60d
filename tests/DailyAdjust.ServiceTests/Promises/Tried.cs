using System.Globalization;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>
/// How often a promise was tried: tests that repeat themselves ask here how often, and say what came of it. `tests/promises.sh` sets both variables, and adds
/// the lines up; without it the small counts hold and nothing is written. They do not begin with DAILYADJUST_: the program refuses settings that it does not know.
/// </summary>
internal static class Tried
{
    /// <summary>A file that takes one line "promise TAB what TAB count" per report.</summary>
    private const string File = "PROMISES_TRIED";

    /// <summary>"full" = the counts that a release is held to.</summary>
    private const string Counts = "PROMISES_COUNTS";

    private static readonly Lock Guard = new();

    /// <summary>How often to try.</summary>
    /// <param name="small">At every change.</param>
    /// <param name="full">Before a release.</param>
    public static int Times(int small, int full) =>
        string.Equals(Environment.GetEnvironmentVariable(Counts), "full", StringComparison.Ordinal) ? full : small;

    /// <summary>Says that something held so often; called when it did.</summary>
    /// <param name="promise">Its number in docs/promises.md.</param>
    /// <param name="what">A few words: "kills at a random moment".</param>
    /// <param name="count">How often.</param>
    public static void Held(int promise, string what, int count)
    {
        if (Environment.GetEnvironmentVariable(File) is { Length: > 0 } file)
        {
            lock (Guard)
            {
                System.IO.File.AppendAllText(file, string.Create(CultureInfo.InvariantCulture, $"{promise}\t{what}\t{count}\n"));
            }
        }
    }
}
