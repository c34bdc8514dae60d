using System.Globalization;

namespace DailyAdjust.Fuzz.Processes;

/// <summary>Reads inputs one after another, in a process of its own; each find is a line "failed TAB number TAB what" on standard output.</summary>
internal static class Child
{
    public static int Run(FuzzOptions options, string notePath)
    {
        using var note = new Note(notePath);
        using var output = new StreamWriter(Console.OpenStandardOutput()) { AutoFlush = true };
        var thread = new Thread(
            () =>
            {
                for (var index = options.From; index < options.From + options.Count; index++)
                {
                    note.Index = index;
                    if (Reading.Fault(options, index) is { } fault)
                    {
                        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"failed\t{index}\t{fault}"));
                    }
                }
            },
            Bounds.StackBytes);
        thread.Start();
        thread.Join();
        return 0;
    }
}
