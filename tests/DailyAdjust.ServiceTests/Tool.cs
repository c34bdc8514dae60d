using System.Diagnostics;
using Xunit;

namespace DailyAdjust.ServiceTests;

/// <summary>Programs of the machine that tests use: a test that lacks one, or the right to use it, is skipped by name.</summary>
internal static class Tool
{
    private static readonly string[] Mounting = ["unshare", "nsenter", "mount"];
    private static readonly Lazy<bool> MayMount = new(() => Run("unshare", "-m", "mount", "-t", "tmpfs", "none", Path.GetTempPath()).ExitCode == 0);
    private static readonly Lazy<bool> MayTrace = new(() => Run("strace", "-o", "/dev/null", "true").ExitCode == 0);

    /// <summary>Skips the test on another system, where one of them is missing, and where this user or machine may not use it.</summary>
    public static void Need(params string[] names)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Linux");
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Append("/usr/sbin").Append("/sbin").ToList();
        foreach (var name in names)
        {
            Assert.SkipUnless(folders.Exists(folder => File.Exists(Path.Combine(folder, name))), $"{name} is not installed.");
        }

        Assert.SkipWhen(names.Intersect(Mounting, StringComparer.Ordinal).Any() && !MayMount.Value, "There is no right to mount.");
        Assert.SkipWhen(names.Contains("strace", StringComparer.Ordinal) && !MayTrace.Value, "There is no right to trace.");
        Assert.SkipWhen(names.Contains("setpriv", StringComparer.Ordinal) && !Environment.IsPrivilegedProcess, "Only root becomes another user.");
    }

    /// <summary>What a program is started under so that, whoever runs the tests, it may not pass by rights; needs setpriv.</summary>
    public static IReadOnlyList<string> WithoutPrivileges { get; } = ["setpriv", "--bounding-set", "-all", "--inh-caps", "-all", "--"];

    /// <summary>Runs one to its end.</summary>
    public static ProgramResult Run(string name, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(name, arguments) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, RedirectStandardInput = true })
            ?? throw new InvalidOperationException($"{name} did not start.");
        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(TimeSpan.FromMinutes(2)))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"{name} did not end.");
        }

        return new(process.ExitCode, output.GetAwaiter().GetResult(), error.GetAwaiter().GetResult());
    }

    /// <summary>Runs one that has to end well.</summary>
    public static void Do(string name, params string[] arguments)
    {
        var result = Run(name, arguments);
        Assert.True(result.ExitCode == 0, $"{name} {string.Join(' ', arguments)}: {result}");
    }
}
