using System.Diagnostics;

namespace DailyAdjust.ServiceTests;

/// <summary>What a run of the real program left behind.</summary>
public sealed record ProgramResult(int ExitCode, string Output, string Error)
{
    public override string ToString() => $"exit {ExitCode}\n--- output\n{Output}\n--- error\n{Error}";
}

/// <summary>Starts the built program as a process of its own.</summary>
public static class RunningProgram
{
    /// <summary>The program, for tests that start it through another tool.</summary>
    public static string Path { get; } =
        System.IO.Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? "dailyadjust.exe" : "dailyadjust");

    public static ProgramResult Run(params string[] arguments) => Run(new ProgramStart(arguments));

    public static ProgramResult Run(ProgramStart start)
    {
        using var process = Start(start);
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        process.StandardInput.Write(start.Input);
        process.StandardInput.Close();
        if (!process.WaitForExit(TimeSpan.FromMinutes(2)))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException("The program did not end: " + string.Join(' ', start.Arguments));
        }

        return new(process.ExitCode, output.GetAwaiter().GetResult(), error.GetAwaiter().GetResult());
    }

    public static Process Start(ProgramStart start)
    {
        string[] line = [.. start.Under, Path, .. start.Arguments];
        var info = new ProcessStartInfo(line[0], line[1..])
        {
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = start.WorkingFolder ?? System.IO.Path.GetTempPath(),
        };
        info.Environment.Remove("DAILYADJUST_HOME");

        // A browser that happens to be installed must not make tests slower.
        info.Environment["DAILYADJUST_PDF"] = "never";
        foreach (var (name, value) in start.Variables)
        {
            info.Environment[name] = value;
        }

        return Process.Start(info) ?? throw new InvalidOperationException("The program did not start.");
    }
}

/// <summary>How to start the program.</summary>
public sealed record ProgramStart(params string[] Arguments)
{
    public string Input { get; init; } = "";

    public string? WorkingFolder { get; init; }

    /// <summary>A program that starts it and its arguments (strace, setpriv, nsenter, ...); empty = none.</summary>
    public IReadOnlyList<string> Under { get; init; } = [];

    public IReadOnlyDictionary<string, string> Variables { get; init; } = new Dictionary<string, string>(StringComparer.Ordinal);
}
