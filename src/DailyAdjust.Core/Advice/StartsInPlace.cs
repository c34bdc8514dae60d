using DailyAdjust.Core.Irrigation;

namespace DailyAdjust.Core.Advice;

/// <summary>How a program's starts are split where its stations would run longer than their ground takes at once.</summary>
/// <param name="Starts">In place of each start, 2 or more.</param>
/// <param name="ApartMinutes">From one of them to the next, whole minutes: its stations run one after another, and what stands on the surface soaks in.</param>
/// <param name="ThatFit">So many of them end, and soak in, before the program's own next start, 1 to <paramref name="Starts"/>.</param>
/// <param name="NextOwnMinutes">From a start to the program's own next one where not all of them fit; null = all fit.</param>
public sealed record StartsInPlace(int Starts, double ApartMinutes, int ThatFit, double? NextOwnMinutes)
{
    /// <summary>Starts that are looked at for the least time between two of a program.</summary>
    private const int Looked = 32;

    /// <param name="context">Knows the starts in force.</param>
    /// <param name="program">Whose horizon has a start, or not.</param>
    /// <param name="runs">Its stations that run too long, at the advised number.</param>
    /// <param name="percent">That number.</param>
    /// <returns>Null where nothing is to be split, or where a grow-in's short starts are keyed in.</returns>
    internal static StartsInPlace? Of(AdviceContext context, ProgramCase program, IReadOnlyList<LongRun> runs, double percent)
    {
        List<StartInForce> starts = [.. context.StartsOf(program.Program, program.Horizon.Opens).Take(Looked)];
        if (runs.Count == 0 || starts.Count == 0 || starts[0].GrowIn is not null)
        {
            return null;
        }

        var count = runs.Max(r => r.Split.Cycles);
        var length = context.Laying.LengthOf(starts[0].Due(program.Program, percent / count)).TotalMinutes;
        var apart = Math.Ceiling(Math.Max(length, runs.Max(r => (r.Minutes / count) + r.Split.SoakMinutes)));
        var between = starts.Zip(starts.Skip(1), (a, b) => (b.Start.At - a.Start.At).TotalMinutes).Where(m => m > 0).DefaultIfEmpty(double.PositiveInfinity).Min();
        var fit = (int)Math.Clamp(Math.Floor(between / apart), 1, count);
        return new StartsInPlace(count, apart, fit, fit < count ? between : null);
    }
}
