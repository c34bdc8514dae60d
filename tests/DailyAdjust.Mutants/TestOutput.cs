using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;

namespace DailyAdjust.Mutants;

/// <summary>How a run of tests ended.</summary>
internal enum TestEnd
{
    Passed,
    Failed,
    TimedOut,
}

/// <summary>Copies of the built tests, one for each worker, in which Core is exchanged; they lie inside the repository because tests read its files.</summary>
internal sealed class TestOutput : IDisposable
{
    private readonly string _folder;
    private readonly BlockingCollection<string> _free = [];

    public int Copies { get; private init; }

    private TestOutput(string folder) => _folder = folder;

    public static TestOutput CopyFor(string root, int workers)
    {
        var built = Path.Combine(root, "tests", "DailyAdjust.Tests", "bin", "Release", "net10.0");
        if (!File.Exists(Path.Combine(built, "DailyAdjust.Tests.dll")))
        {
            throw new InvalidOperationException("The tests are not built: dotnet build -c Release");
        }

        var output = new TestOutput(Path.Combine(root, "tests", "DailyAdjust.Tests", "bin", "mutants")) { Copies = workers };
        output.Dispose();
        for (var worker = 0; worker < workers; worker++)
        {
            var copy = Path.Combine(output._folder, worker.ToString(CultureInfo.InvariantCulture));
            foreach (var file in Directory.EnumerateFiles(built, "*", SearchOption.AllDirectories))
            {
                var to = Path.Combine(copy, Path.GetRelativePath(built, file));
                Directory.CreateDirectory(Path.GetDirectoryName(to)!);
                File.Copy(file, to);
            }

            output._free.Add(copy);
        }

        return output;
    }

    /// <summary>Does something in a copy that nobody else uses meanwhile, with this Core in it.</summary>
    public T With<T>(byte[] core, Func<string, T> work)
    {
        var copy = _free.Take();
        try
        {
            File.WriteAllBytes(Path.Combine(copy, "DailyAdjust.Core.dll"), core);
            return work(copy);
        }
        finally
        {
            _free.Add(copy);
        }
    }

    /// <summary>Runs tests up to the first that fails.</summary>
    /// <param name="copy">Of the built tests.</param>
    /// <param name="arguments">Of the test program.</param>
    /// <param name="limit">After which it is ended.</param>
    /// <param name="reach">Where members that were come to are written; null = they are not noted.</param>
    /// <param name="output">What the program printed.</param>
    public static TestEnd Run(string copy, IEnumerable<string> arguments, TimeSpan limit, string? reach, out string output)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(copy, "DailyAdjust.Tests.dll"), "-noLogo", "-noColor", .. arguments])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            WorkingDirectory = copy,
        };
        start.Environment[Reach.Variable] = reach;
        using var process = Process.Start(start) ?? throw new InvalidOperationException("dotnet did not start.");
        var printed = process.StandardOutput.ReadToEndAsync();
        if (!process.WaitForExit(limit))
        {
            process.Kill(entireProcessTree: true);
            process.WaitForExit();
            output = "";
            return TestEnd.TimedOut;
        }

        output = printed.GetAwaiter().GetResult();
        return process.ExitCode == 0 ? TestEnd.Passed : TestEnd.Failed;
    }

    public void Dispose()
    {
        if (Directory.Exists(_folder))
        {
            Directory.Delete(_folder, recursive: true);
        }
    }
}
