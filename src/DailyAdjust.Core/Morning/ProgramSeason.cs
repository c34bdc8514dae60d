using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>What a program was set to, day by day, by the logbook.</summary>
/// <param name="From">The date of the first number.</param>
/// <param name="Percents">At the hour by which the round is done, percent; 0 = off or paused.</param>
public sealed record ProgramSeason(ProgramKey Program, DateOnly From, IReadOnlyList<double> Percents)
{
    /// <summary>From 1 January, or the first day reckoned, through the day before the sheet.</summary>
    internal static IReadOnlyList<ProgramSeason> Of(AdviceContext context, IEnumerable<ProgramKey> programs, DateOnly? from) =>
        from is { } first && first < context.Date ? [.. programs.Select(p => new ProgramSeason(p, first, Percentages(context, p, first)))] : [];

    private static double[] Percentages(AdviceContext context, ProgramKey program, DateOnly first) =>
        [.. Enumerable.Range(0, context.Date.DayNumber - first.DayNumber)
            .Select(day => context.Settings.At(program, context.Site.RoundDone(first.AddDays(day))).Setting.Percent)];
}
