using System.CommandLine;
using System.Globalization;
using System.Runtime.InteropServices;
using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Reports;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace DailyAdjust.Benchmarks;

/// <summary>Reference ET and zone days beside the same loops in C, in one process and on one thread; the results must agree before anything is timed.</summary>
internal static class KernelCommand
{
    private const double EtoToleranceMm = 1e-9;

    /// <summary>Of sums of a hundred thousand millimetres and more.</summary>
    private const double SumsToleranceMm = 1e-6;

    /// <summary>Short ones, since on a shared machine a short one is likelier to be left alone; the least counts.</summary>
    private const int Iterations = 80;

    public static LoopsInC? Loops { get; private set; }

    public static Command Create()
    {
        var work = new Argument<string>("work") { Description = "A folder for what NumPy is to reckon with." };
        var library = new Option<string?>("--c") { Description = "The library of the loops in C; without it ours are measured alone." };
        var command = new Command("kernels", "Nanoseconds of a day's reference ET and of a zone day, ours and in C, as `what<tab>whose<tab>ns`.") { work, library };
        command.SetAction(given =>
        {
            Loops = given.GetValue(library) is { } path ? new LoopsInC(path) : null;
            return WriteAndCompare(given.GetValue(work)!) ? Measure(given.GetValue(work)!) : 1;
        });
        return command;
    }

    private static bool WriteAndCompare(string work)
    {
        var eto = EtoDays.Invented();
        double[] ours = [.. eto.Ours()];
        File.WriteAllBytes(Path.Combine(work, "eto-columns"), MemoryMarshal.AsBytes<double>([.. eto.Columns.SelectMany(c => c)]));
        File.WriteAllBytes(Path.Combine(work, "eto-ours"), MemoryMarshal.AsBytes<double>(ours));
        if (Loops is null)
        {
            return true;
        }

        var agree = Agree("reference ET", ours, eto.InC(Loops), EtoToleranceMm);
        foreach (var rainEveryDay in new[] { false, true })
        {
            var days = ZoneDays.Invented(rainEveryDay);
            Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{ZoneDays.Count} zone days, {days.EventsEach:0.00} events each"));
            ours = [.. days.Ours()];
            agree &= Agree("zone days", ours, days.InC(Loops), SumsToleranceMm);
        }

        return agree;
    }

    private static bool Agree(string what, double[] ours, double[] inC, double tolerance)
    {
        var apart = ours.Zip(inC, (a, b) => Math.Abs(a - b)).Max();
        if (apart <= tolerance)
        {
            return true;
        }

        Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: C and DailyAdjust are {apart} mm apart"));
        return false;
    }

    private static int Measure(string work)
    {
        var config = ManualConfig.CreateEmpty()
            .AddJob(Job.Default.WithToolchain(InProcessEmitToolchain.Instance).WithWarmupCount(3).WithIterationCount(Iterations).WithInvocationCount(1).WithUnrollFactor(1))
            .AddLogger(NullLogger.Instance)
            .AddColumnProvider(DefaultColumnProviders.Instance)
            .WithArtifactsPath(work);
        if (Loops is null)
        {
            config.AddFilter(new BenchmarkDotNet.Filters.NameFilter(name => name.Contains(nameof(EtoBenchmarks.Ours), StringComparison.Ordinal)));
        }

        Tell("eto", BenchmarkRunner.Run<EtoBenchmarks>(config));
        Tell("zone-day", BenchmarkRunner.Run<ZoneDayBenchmarks>(config));
        return 0;
    }

    private static void Tell(string what, Summary summary)
    {
        foreach (var report in summary.Reports)
        {
            var of = report.BenchmarkCase;
            var rainy = of.Parameters.Items.Any(p => p.Value is true) ? "-rain" : "";
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}{rainy}\t{(string.Equals(of.Descriptor.WorkloadMethod.Name, nameof(EtoBenchmarks.Ours), StringComparison.Ordinal) ? "dailyadjust" : "c")}\t{report.ResultStatistics!.Min:0.00}"));
        }
    }
}
