using System.Diagnostics;
using System.Globalization;
using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Benchmarks;

/// <summary>Whether the night of a large course fits, and what mends it. Shared machines are noisy, so the least of many runs is what the work takes.</summary>
internal static class NightFitting
{
    private const int WarmUp = 20;
    private const int Runs = 60;

    public static void Measure()
    {
        var site = LargeCourse.Site();
        var context = LargeCourse.Morning(site);

        var fit = Fit();
        Console.WriteLine(FormattableString.Invariant(
            $"{site.Controllers.Count} controllers, {fit.Runs.Count} runs, {fit.Overlaps.Count} overlaps, {fit.Pump.Count} spans beyond the pump"));
        for (var i = 0; i < WarmUp; i++)
        {
            Fit();
        }

        var milliseconds = new double[Runs];
        for (var i = 0; i < Runs; i++)
        {
            GC.Collect();
            var begun = Stopwatch.GetTimestamp();
            Fit();
            milliseconds[i] = Stopwatch.GetElapsedTime(begun).TotalMilliseconds;
        }

        Array.Sort(milliseconds);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"fit: least {milliseconds[0]:0.0} ms, middle {milliseconds[Runs / 2]:0.0} ms, most {milliseconds[^1]:0.0} ms of {Runs} runs"));

        // Other starts are looked for only where something does not fit; once, at its worst: nearly every program overlaps another.
        var percents = context.Programs.ToDictionary(p => p.Key, _ => 100.0);
        var looked = Stopwatch.GetTimestamp();
        var moves = new StartMoves(context, new Nights(context, [], []), _ => true).Mend(new NightFit([], [], [], [], []), percents).Moves;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{moves.Count} starts that would fit: {Stopwatch.GetElapsedTime(looked).TotalMilliseconds:0} ms"));

        // Numbers are cut only where the pump is asked for too much; once, at its worst: every dial has a part in it.
        IReadOnlyList<ProgramAdvice> advice =
        [
            .. context.Programs.Select(p => new ProgramAdvice
            {
                Key = p.Key,
                Name = "",
                Present = new(50),
                Confirmed = true,
                Advice = AdviceKind.Set,
                Percent = 100,
                Reason = Phrase.Empty,
            }),
        ];
        var cutting = Stopwatch.GetTimestamp();
        var cuts = new NightCuts(context, new Nights(context, [], [])).Of(advice, _ => true);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{cuts.Count} numbers cut: {Stopwatch.GetElapsedTime(cutting).TotalMilliseconds:0} ms"));

        // As a sheet does it: what runs, whether any of it is too much, and everything that does not fit.
        NightFit Fit()
        {
            var nights = new Nights(context, [], []);
            var runs = nights.Runs(_ => 100);
            if (nights.Troubles(runs).Count == 0)
            {
                throw new InvalidOperationException("Everything fits: this course is to ask too much of its nights.");
            }

            return nights.Fit(runs, []);
        }
    }
}
