using System.Diagnostics;
using System.Globalization;
using DailyAdjust.Mutants;

// Faults put into Core one at a time, a sample by seed, and whether its tests see them. The tests must have been built (Release).
//   --count N      how many faults (60)
//   --seed S       which ones (1)
//   --folder F     in this folder of Core alone
//   --workers W    how many at a time (1)
if (MutantOptions.Parse(args, out var options) is { } fault)
{
    await Console.Error.WriteLineAsync(fault);
    return 2;
}

var begun = Stopwatch.GetTimestamp();
var root = CoreSource.FindRoot();
var source = CoreSource.Read(root);
using var tests = TestOutput.CopyFor(root, options.Workers);
Console.WriteLine("Which tests reach what:");
var units = Baseline.Of(source, tests);
Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{units.Count} groups of tests, {Stopwatch.GetElapsedTime(begun).TotalSeconds:0} s"));
var results = Trials.Run(source, MutantSample.Of(source, options), units, tests, options);
return Summary.Print(results, Stopwatch.GetElapsedTime(begun));
