using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;

namespace DailyAdjust.Fuzz.Processes;

/// <summary>Shares the inputs out to children; one that dies or hangs costs one input, is told with its number, tried again alone, and the others go on.</summary>
internal static class Parent
{
    /// <summary>A fresh process so often: none grows old.</summary>
    private const int MostOfAChild = 20_000;

    private const int FaultsShown = 100;

    public static int Run(FuzzOptions options)
    {
        var begun = Stopwatch.GetTimestamp();
        var folder = Directory.CreateTempSubdirectory("dailyadjust-fuzz-").FullName;
        var workers = Math.Max(1, Environment.ProcessorCount);
        var share = Math.Clamp((options.Count + workers - 1) / workers, 1, MostOfAChild);
        var blocks = new ConcurrentQueue<(int From, int Count)>(
            Enumerable.Range(0, (options.Count + share - 1) / share).Select(i => (i * share, Math.Min(share, options.Count - (i * share)))));
        var faults = new ConcurrentBag<(int Index, string What)>();
        var tried = 0;
        try
        {
            Task.WaitAll([.. Enumerable.Range(0, workers).Select(_ => Task.Factory.StartNew(
                () =>
                {
                    while (blocks.TryDequeue(out var block))
                    {
                        Block(options, block.From, block.Count, folder, faults);
                        var done = Interlocked.Add(ref tried, block.Count);
                        Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{done} of {options.Count} tried, {faults.Count} faults, {Stopwatch.GetElapsedTime(begun).TotalSeconds:0} s"));
                    }
                },
                CancellationToken.None,
                TaskCreationOptions.LongRunning,
                TaskScheduler.Default))]);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        foreach (var (index, what) in faults.OrderBy(f => f.Index).Take(FaultsShown))
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"seed {options.Seed}, input {index}: {what}"));
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Stopwatch.GetElapsedTime(begun).TotalSeconds:0} s"));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{options.Count} tried, {faults.Select(f => f.Index).Distinct().Count()} failed"));
        return faults.IsEmpty ? 0 : 1;
    }

    private static void Block(FuzzOptions options, int from, int count, string folder, ConcurrentBag<(int Index, string What)> faults)
    {
        var end = from + count;
        while (from < end)
        {
            var child = ChildProcess.Run(options, from, end - from, folder);
            foreach (var fault in child.Faults)
            {
                Found(fault);
            }

            if (child.Death is not { } death)
            {
                return;
            }

            var again = ChildProcess.Run(options, child.Index, 1, folder);
            Found((child.Index, again.Death is null ? death + " (not again when it is tried alone)" : death + " (again when it is tried alone)"));
            from = child.Index + 1;
        }

        // At once: a long run need not come to its end to be of use.
        void Found((int Index, string What) fault)
        {
            faults.Add(fault);
            Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"seed {options.Seed}, input {fault.Index}: {fault.What}"));
        }
    }
}
