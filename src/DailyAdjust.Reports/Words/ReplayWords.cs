using DailyAdjust.Core.Replay;

namespace DailyAdjust.Reports.Words;

/// <summary>The words that files use for ways to water.</summary>
public static class ReplayWords
{
    public static string Of(ReplayPolicy policy) => policy switch
    {
        ReplayPolicy.Advice => "advice",
        ReplayPolicy.Fixed => "fixed",
        ReplayPolicy.Perfect => "perfect",
        ReplayPolicy.Refill => "refill",
        _ => throw new ArgumentOutOfRangeException(nameof(policy), policy, "Not a way to water."),
    };

    /// <summary>Why knowing everything may meet less of the demand than watering too much; empty where it does not, or where nothing was overfilled, as the figures are printed.</summary>
    public static string PerfectBelowFixed(ReplayResult replay)
    {
        var (perfect, fix) = (replay.Of(ReplayPolicy.Perfect), replay.Of(ReplayPolicy.Fixed));
        List<(string Name, ReplayFigures Perfect, ReplayFigures Fixed)> ground =
        [
            ("the site", perfect.Figures, fix.Figures),
            .. perfect.Areas.Zip(fix.Areas).Select(a => (a.First.Area, a.First.Figures, a.Second.Figures)),
        ];
        var where = ground.Where(g => Adequacy(g.Perfect) < Adequacy(g.Fixed) && Excess(g.Fixed) > 0).ToList();
        if (where.Count == 0)
        {
            return "";
        }

        var excess = string.Join(", ", where.Select(g => $"{Tables.Plain.Fixed(Excess(g.Fixed), 0)} %{(where.Count > 1 ? $" on {g.Name}" : "")}"));
        return $"Adequacy of {Of(ReplayPolicy.Perfect)} is below that of {Of(ReplayPolicy.Fixed)} on {CommonWords.List([.. where.Select(g => g.Name)])}: {Of(ReplayPolicy.Perfect)} keeps the ground within the allowable and gives no more, "
            + $"nor more at once than soaks in, so it has no reserve where one start is not enough; {Of(ReplayPolicy.Fixed)} overfills (excess {excess}) and has one.";
    }

    private static double Adequacy(ReplayFigures figures) => Math.Round(figures.AdequacyPercent, 2);

    /// <summary>In whole percent, as the sentence has it.</summary>
    private static double Excess(ReplayFigures figures) => Math.Round(figures.ExcessPercent, MidpointRounding.AwayFromZero);
}
