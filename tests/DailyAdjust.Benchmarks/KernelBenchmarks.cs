using System.Diagnostics;
using BenchmarkDotNet.Attributes;

namespace DailyAdjust.Benchmarks;

/// <summary>Long enough for the runtime to have compiled a loop as well as it ever will.</summary>
internal static class Warm
{
    public static void Up(Func<double[]> loop)
    {
        var begun = Stopwatch.GetTimestamp();
        while (Stopwatch.GetElapsedTime(begun).TotalSeconds < 1.5)
        {
            loop();
        }
    }
}

/// <summary>Reference ET of one station day.</summary>
public class EtoBenchmarks
{
    private readonly EtoDays _days = EtoDays.Invented();

    [GlobalSetup]
    public void Setup() => Warm.Up(_days.Ours);

    [Benchmark(OperationsPerInvoke = EtoDays.Rows)]
    public double[] Ours() => _days.Ours();

    [Benchmark(OperationsPerInvoke = EtoDays.Rows)]
    public double[] InC() => _days.InC(KernelCommand.Loops!);
}

/// <summary>Balance of one zone day.</summary>
public class ZoneDayBenchmarks
{
    private ZoneDays _days = null!;

    [Params(false, true)]
    public bool RainEveryDay { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        _days = ZoneDays.Invented(RainEveryDay);
        Warm.Up(_days.Ours);
    }

    [Benchmark(OperationsPerInvoke = ZoneDays.Count)]
    public double[] Ours() => _days.Ours();

    [Benchmark(OperationsPerInvoke = ZoneDays.Count)]
    public double[] InC() => _days.InC(KernelCommand.Loops!);
}
