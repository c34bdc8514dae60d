using System.Diagnostics;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>Small libraries in C that stand between one process and the system, for what no test may do to the machine itself.</summary>
internal static class NativeShim
{
    /// <returns>The library's path, for LD_PRELOAD.</returns>
    public static string Compile(string name, string code)
    {
        var folder = Directory.CreateTempSubdirectory("dailyadjust-shim-").FullName;
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(folder, recursive: true);
        var (source, library) = (Path.Combine(folder, name + ".c"), Path.Combine(folder, name + ".so"));
        File.WriteAllText(source, code);
        var compiled = Tool.Run("gcc", "-shared", "-fPIC", "-O1", "-o", library, source, "-ldl");
        return compiled.ExitCode == 0 ? library : throw new InvalidOperationException(compiled.ToString());
    }
}

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

    public static ProgramResult Run(string name, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(name, arguments) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true })
            ?? throw new InvalidOperationException($"{name} did not start.");
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new(process.ExitCode, output, error.GetAwaiter().GetResult());
    }
}
