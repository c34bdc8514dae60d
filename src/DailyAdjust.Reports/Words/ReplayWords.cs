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

    /// <summary>Why knowing everything may meet less of the demand than watering too much; empty where it does not, as the figures are printed.</summary>
    public static string PerfectBelowFixed(ReplayResult replay)
    {
        var (perfect, fix) = (replay.Of(ReplayPolicy.Perfect), replay.Of(ReplayPolicy.Fixed));
        bool Less(ReplayFigures one, ReplayFigures other) => Printed(one) < Printed(other);
        List<string> where =
        [
            .. Less(perfect.Figures, fix.Figures) ? (string[])["the site"] : [],
            .. perfect.Areas.Zip(fix.Areas).Where(a => Less(a.First.Figures, a.Second.Figures)).Select(a => a.First.Area),
        ];
        return where.Count == 0
            ? ""
            : $"Adequacy of {Of(ReplayPolicy.Perfect)} is below that of {Of(ReplayPolicy.Fixed)} on {CommonWords.List(where)}: {Of(ReplayPolicy.Perfect)} keeps the ground within the allowable and gives no more, "
                + $"nor more at once than soaks in, so it has no reserve where one start is not enough; {Of(ReplayPolicy.Fixed)} overfills (excess {Tables.Plain.Fixed(fix.Figures.ExcessPercent, 0)} %) and has one.";
    }

    private static double Printed(ReplayFigures figures) => Math.Round(figures.AdequacyPercent, 2);
}
