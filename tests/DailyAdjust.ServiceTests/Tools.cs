using System.Diagnostics;
using Xunit;

namespace DailyAdjust.ServiceTests;

/// <summary>Programs of the machine that some tests need: without them those tests are skipped by name.</summary>
internal static class Tools
{
    public static void SkipWithout(params string[] tools)
    {
        foreach (var tool in tools)
        {
            Assert.SkipUnless(IsThere(tool), $"{tool} is not installed.");
        }
    }

    /// <returns>Its output and its errors.</returns>
    public static string Run(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false })!;
        var error = process.StandardError.ReadToEndAsync();
        var text = process.StandardOutput.ReadToEnd() + error.GetAwaiter().GetResult();
        process.WaitForExit();
        return process.ExitCode == 0 ? text : throw new InvalidOperationException($"{program} {string.Join(' ', arguments)}: exit {process.ExitCode}\n{text}");
    }

    private static bool IsThere(string tool) => OperatingSystem.IsLinux()
        && (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':').Append("/usr/sbin").Append("/sbin").Any(folder => File.Exists(Path.Combine(folder, tool)));
}
