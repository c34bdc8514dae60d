using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace DailyAdjust.Service.Paper;

/// <summary>
/// Processes of a browser that outlive it: nobody is their parent any more, but all of them were started with the folder of their print, whose name no other process has, as their home.
/// Found where the system shows what its processes were started with (Linux).
/// </summary>
internal static class LeftProcesses
{
    /// <param name="folder">Of one print.</param>
    public static void End(string folder)
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        var mark = Encoding.UTF8.GetBytes($"HOME={folder}\0");
        foreach (var process in Directory.EnumerateDirectories("/proc"))
        {
            if (int.TryParse(Path.GetFileName(process), NumberStyles.None, CultureInfo.InvariantCulture, out var id) && id != Environment.ProcessId && Has(process, mark))
            {
                Kill(id);
            }
        }
    }

    private static bool Has(string process, byte[] mark)
    {
        try
        {
            return File.ReadAllBytes(Path.Combine(process, "environ")).AsSpan().IndexOf(mark) >= 0;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // Another account's, or it has ended.
            return false;
        }
    }

    private static void Kill(int id)
    {
        try
        {
            using var process = Process.GetProcessById(id);
            process.Kill();
        }
        catch (Exception failure) when (failure is ArgumentException or InvalidOperationException or System.ComponentModel.Win32Exception)
        {
            // It has ended by itself.
        }
    }
}
