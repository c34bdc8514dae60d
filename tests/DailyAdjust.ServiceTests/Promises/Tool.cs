using System.Diagnostics;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>Programs of the system that tests use.</summary>
internal static class Tool
{
    /// <summary>Skips the test on another system, or where one of them is missing.</summary>
    public static void Need(params string[] names)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Linux");
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Append("/usr/sbin").ToList();
        foreach (var name in names)
        {
            Assert.SkipUnless(folders.Exists(folder => File.Exists(Path.Combine(folder, name))), name);
        }
    }

    /// <summary>Runs one to its end.</summary>
    public static ProgramResult Run(string tool, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(tool, arguments) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, RedirectStandardInput = true })!;
        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(TimeSpan.FromMinutes(2)))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"{tool} did not end.");
        }

        return new(process.ExitCode, output.GetAwaiter().GetResult(), error.GetAwaiter().GetResult());
    }
}
