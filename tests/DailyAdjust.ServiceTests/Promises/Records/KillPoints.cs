using System.Globalization;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Records;

/// <summary>A call of the operating system that changes a file, counted within one run: "the 7th fsync".</summary>
internal sealed record KillPoint(string Call, int Count)
{
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"before {Call} {Count}");
}

/// <summary>Finds every call with which a command changes files, and kills the command at one of them.</summary>
internal static class KillPoints
{
    private static readonly string[] _calls = ["pwrite64", "write", "fsync", "fdatasync", "ftruncate", "rename", "unlink"];

    public static void SkipWithoutStrace() =>
        Tool.Need("strace");

    /// <summary>Runs a command to its end.</summary>
    /// <param name="within">Only calls with files under this folder count.</param>
    /// <param name="arguments">The command.</param>
    /// <returns>Its calls, in their order.</returns>
    public static IReadOnlyList<KillPoint> Of(string within, params string[] arguments)
    {
        var trace = Path.GetTempFileName();
        try
        {
            var run = Tool.Run("strace", [.. Strace(trace), "--seccomp-bpf", "-y", "-e", $"trace={string.Join(',', _calls)}", RunningProgram.Path, .. arguments]);
            Assert.True(run.ExitCode == 0, run.ToString());
            var counts = new Dictionary<(string, string), int>();
            var points = new List<KillPoint>();
            foreach (var line in File.ReadAllLines(trace).Where(l => l.Contains('(', StringComparison.Ordinal)))
            {
                // "1234 pwrite64(95</home/ledger.db>, ...": counted per thread and call, as strace itself counts.
                var (thread, call) = (line[..line.IndexOf(' ', StringComparison.Ordinal)], line[(line.IndexOf(' ', StringComparison.Ordinal) + 1)..line.IndexOf('(', StringComparison.Ordinal)].Trim());
                var count = counts[(thread, call)] = counts.GetValueOrDefault((thread, call)) + 1;
                if (line.Contains(within, StringComparison.Ordinal))
                {
                    points.Add(new(call, count));
                }
            }

            return points;
        }
        finally
        {
            File.Delete(trace);
        }
    }

    /// <summary>Some of them, spread evenly from the first to the last.</summary>
    public static IReadOnlyList<KillPoint> Some(this IReadOnlyList<KillPoint> points, int count) =>
        count >= points.Count ? points : [.. Enumerable.Range(0, count).Select(i => points[(int)((long)i * (points.Count - 1) / (count - 1))])];

    /// <summary>Runs a command and kills it just before that call.</summary>
    public static void Kill(KillPoint point, params string[] arguments)
    {
        var run = Tool.Run(
            "strace",
            [
                .. Strace("/dev/null"), "-e", $"trace={point.Call}", "-e", string.Create(CultureInfo.InvariantCulture, $"inject={point.Call}:signal=KILL:when={point.Count}"),
                RunningProgram.Path, .. arguments,
            ]);
        Assert.True(run.ExitCode != 0, $"{point}: it was not killed.\n{run}");
    }

    private static string[] Strace(string output) => ["-f", "-qq", "-e", "signal=none", "-o", output];
}
