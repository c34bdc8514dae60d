using System.Diagnostics;
using System.Globalization;

namespace DailyAdjust.Service.Home;

/// <summary>Files that were on their way to their name when their process ended: the next one that writes the same name takes them away.</summary>
internal static class Leftovers
{
    /// <summary>".name.PID.tmp": hidden, and of this process alone.</summary>
    public static string NameOf(string name, string ending) => string.Create(CultureInfo.InvariantCulture, $".{name}.{Environment.ProcessId}{ending}");

    /// <summary>Never throws: the file itself is written.</summary>
    public static void Remove(string folder, string name, string ending)
    {
        try
        {
            foreach (var file in Directory.GetFiles(folder, ".*"))
            {
                if (ProcessOf(Path.GetFileName(file), $".{name}.", ending) is { } process && !IsRunning(process))
                {
                    File.Delete(file);
                }
            }
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // It takes some space, and that until the next time.
        }
    }

    private static int? ProcessOf(string file, string begin, string ending) =>
        file.Length > begin.Length + ending.Length && file.StartsWith(begin, StringComparison.Ordinal) && file.EndsWith(ending, StringComparison.Ordinal)
            && int.TryParse(file.AsSpan(begin.Length, file.Length - begin.Length - ending.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var process)
            ? process
            : null;

    private static bool IsRunning(int process)
    {
        try
        {
            using var found = Process.GetProcessById(process);
            return true;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }
}
