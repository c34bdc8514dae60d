using System.Diagnostics;
using System.Globalization;

namespace DailyAdjust.Benchmarks;

/// <summary>Work of several sizes, in turn, so that a machine that is busy for a while is busy for all of them: the least time of several rounds counts.</summary>
internal static class InTurn
{
    private const int Rounds = 7;

    /// <summary>By then the runtime has compiled what it finds busy once more.</summary>
    private static readonly TimeSpan Warming = TimeSpan.FromSeconds(4);

    /// <summary>A line each: what, of how many, nanoseconds and bytes allocated a unit.</summary>
    public static void Tell(string what, IEnumerable<(int Of, double Units, Action Work)> cases)
    {
        var all = cases.ToList();
        if (all.Count == 0)
        {
            return;
        }

        var (least, bytes) = (new double[all.Count], new double[all.Count]);
        Array.Fill(least, double.PositiveInfinity);
        for (var begun = Stopwatch.GetTimestamp(); Stopwatch.GetElapsedTime(begun) < Warming;)
        {
            all[0].Work();
        }

        for (var round = 0; round < Rounds; round++)
        {
            for (var i = 0; i < all.Count; i++)
            {
                GC.Collect();
                var (before, begun) = (GC.GetAllocatedBytesForCurrentThread(), Stopwatch.GetTimestamp());
                all[i].Work();
                least[i] = Math.Min(least[i], Stopwatch.GetElapsedTime(begun).TotalNanoseconds / all[i].Units);
                bytes[i] = (GC.GetAllocatedBytesForCurrentThread() - before) / all[i].Units;
            }
        }

        for (var i = 0; i < all.Count; i++)
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}\t{all[i].Of}\t{least[i]:0}\t{bytes[i]:0}"));
        }
    }
}
