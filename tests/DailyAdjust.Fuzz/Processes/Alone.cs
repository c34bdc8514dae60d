using System.Diagnostics;
using System.Globalization;

namespace DailyAdjust.Fuzz.Processes;

/// <summary>One input in this process, to look at what was found.</summary>
internal static class Alone
{
    private const int Shown = 2_000;

    public static int Run(FuzzOptions options, int index)
    {
        var input = Case.Of(options, index);
        var path = Path.Combine(Path.GetTempPath(), string.Create(CultureInfo.InvariantCulture, $"dailyadjust-fuzz-{options.Seed}-{index}.bin"));
        File.WriteAllBytes(path, input.Bytes);
        Console.WriteLine(System.Text.Encoding.Latin1.GetString(input.Bytes, 0, Math.Min(Shown, input.Bytes.Length)));
        Console.WriteLine($"{input.Target.Name}, {input.Bytes.Length} bytes, kept in {path}");
        var begun = Stopwatch.GetTimestamp();
        var fault = Reading.Fault(options, index);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{fault ?? "all held"} ({Stopwatch.GetElapsedTime(begun).TotalSeconds:0.00} s)"));
        Console.WriteLine(fault is null ? "1 tried, 0 failed" : "1 tried, 1 failed");
        return fault is null ? 0 : 1;
    }
}
