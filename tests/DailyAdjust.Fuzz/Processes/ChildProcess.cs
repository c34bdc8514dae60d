using System.Diagnostics;
using System.Globalization;

namespace DailyAdjust.Fuzz.Processes;

/// <summary>How a child ended.</summary>
/// <param name="Faults">Finds that it told, by number.</param>
/// <param name="Index">The input that it had in hand last.</param>
/// <param name="Death">Why it did not come to its end; null = it did.</param>
internal sealed record ChildEnd(IReadOnlyList<(int Index, string What)> Faults, int Index, string? Death);

/// <summary>Starts a child over some inputs and watches it.</summary>
internal static class ChildProcess
{
    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(200);

    public static ChildEnd Run(FuzzOptions options, int from, int count, string folder)
    {
        var notePath = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"note-{from}-{Guid.NewGuid():N}"));
        using var note = new Note(notePath);
        using var process = Start(options, from, count, notePath);
        var faults = new List<(int, string)>();
        var complaint = "";
        process.OutputDataReceived += (_, e) =>
        {
            if (e.Data?.Split('\t', 3) is ["failed", var index, var what])
            {
                faults.Add((int.Parse(index, CultureInfo.InvariantCulture), what));
            }
        };
        process.ErrorDataReceived += (_, e) => complaint = complaint.Length == 0 ? e.Data ?? "" : complaint;
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        var hung = Watch(process, note);
        process.WaitForExit();
        var last = (int)Math.Max(note.Index, from);
        return new(faults, last, hung ?? (process.ExitCode == 0 ? null : string.Create(CultureInfo.InvariantCulture, $"the process ended with {process.ExitCode}: {complaint}")));
    }

    /// <summary>Waits for its end; where one input takes too long, ends it and says so.</summary>
    private static string? Watch(Process process, Note note)
    {
        var (index, since, used) = (note.Index, Stopwatch.GetTimestamp(), TimeSpan.Zero);
        while (!process.WaitForExit(Look))
        {
            var now = Used(process);
            if (note.Index != index)
            {
                (index, since, used) = (note.Index, Stopwatch.GetTimestamp(), now);
            }
            else if ((now - used).TotalSeconds > Bounds.ProcessorSeconds || Stopwatch.GetElapsedTime(since).TotalSeconds > Bounds.WallSeconds)
            {
                process.Kill();
                return string.Create(CultureInfo.InvariantCulture, $"it did not end within {Bounds.ProcessorSeconds} s of processor time");
            }
        }

        return null;
    }

    private static TimeSpan Used(Process process)
    {
        try
        {
            process.Refresh();
            return process.TotalProcessorTime;
        }
        catch (InvalidOperationException)
        {
            return TimeSpan.Zero; // It has just ended.
        }
    }

    private static Process Start(FuzzOptions options, int from, int count, string note)
    {
        string[] arguments = [typeof(ChildProcess).Assembly.Location, "--seed", Text(options.Seed), "--from", Text(from), "--count", Text(count), "--note", note];
        var start = new ProcessStartInfo("dotnet", options.Target is { } target ? [.. arguments, "--target", target] : arguments)
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["DOTNET_GCHeapHardLimit"] = Bounds.HeapBytes.ToString("X", CultureInfo.InvariantCulture);
        start.Environment["DOTNET_DbgEnableMiniDump"] = "0";
        return Process.Start(start) ?? throw new InvalidOperationException("dotnet did not start.");
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
