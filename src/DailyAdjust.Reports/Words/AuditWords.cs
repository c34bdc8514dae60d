using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Words;

/// <summary>What catch cups say, in words: what it means for the minutes, what to look at, what to mind.</summary>
public static class AuditWords
{
    public static IReadOnlyList<string> Cautions { get; } =
    [
        PlanWords.Caution,
        "Reclaimed water: keep to the signs, setbacks and hours of your permit, keep people out of the spray, and wash your hands after emptying the cups.",
        "Too much or too little pressure shows as drift, dry rings and a rate that is off: have it put right by whoever is licensed for it, then test again.",
    ];

    /// <summary>A sentence for each run, then the remarks, then what the numbers are for.</summary>
    public static IReadOnlyList<string> Of(Site site, IReadOnlyList<StationAudit> audits)
    {
        var words = SiteWords.Of(site);
        return
        [
            .. audits.Where(a => a.IsSound).Select(a => a.Audit).Distinct().Select(a => Minutes(a, words)),
            .. audits.SelectMany(a => a.Remarks.Select(r => $"! {(OfStation(r) ? a.Station.Label : Names(a.Audit))}: {Remark(r, a, words)}")).Distinct(StringComparer.Ordinal),
            "Minutes = 60 x depth / rate x multiplier; multiplier = 1 / (0.4 + 0.6 x uniformity). Uniformity: lowest quarter of the cups / all of them; 80 % is excellent, 70 % expected, 55 % and less poor.",
            "The sheet's percentages count rate and uniformity by themselves: do not put the multiplier into base minutes that it adjusts.",
            "They are those of this day's pressure, nozzles and wind: test again after a change.",
        ];
    }

    public static string Class(UniformityClass uniformity) => uniformity switch
    {
        UniformityClass.Excellent => "excellent",
        UniformityClass.Expected => "as expected",
        UniformityClass.BelowExpected => "below expected",
        _ => "poor",
    };

    internal static string Code(UniformityClass uniformity) => uniformity switch
    {
        UniformityClass.Excellent => "excellent",
        UniformityClass.Expected => "expected",
        UniformityClass.BelowExpected => "below-expected",
        _ => "poor",
    };

    internal static string Code(AuditRemark remark) => remark switch
    {
        AuditRemark.FewCups => "few-cups",
        AuditRemark.Windy => "windy",
        AuditRemark.WindUnknown => "wind-unknown",
        AuditRemark.Together => "together",
        AuditRemark.RateDiffers => "rate-differs",
        AuditRemark.Uneven => "uneven",
        _ => "dry-quarter",
    };

    /// <summary>All others are said of a run once.</summary>
    private static bool OfStation(AuditRemark remark) => remark == AuditRemark.RateDiffers;

    private static string Names(CatchAudit audit) => CommonWords.List([.. audit.Cups.Stations.Select(s => s.Label)]);

    private static string Minutes(CatchAudit audit, SiteWords words)
    {
        var depthMm = words.IsUs ? 0.25 * Depth.MmPerInch : 6;
        var minutes = 60 * depthMm / audit.RateMmPerHour;
        return $"{Names(audit)}: {words.DepthOf(depthMm)} takes {SiteWords.Minutes(minutes)} at the mean rate, x {Tables.Plain.Fixed(audit.Multiplier, 2)} = {SiteWords.Minutes(minutes * audit.Multiplier)} for the drier ground to have enough.";
    }

    private static string Remark(AuditRemark remark, StationAudit audit, SiteWords words)
    {
        var cups = audit.Audit.Cups;
        return remark switch
        {
            AuditRemark.FewCups => $"{SiteWords.Count(cups.DepthsMm.Count)} cups are few: {SiteWords.Count(StationAudit.UsualCups)} and more on an even grid are common practice.",
            AuditRemark.Windy => $"{words.Speed(cups.WindMPerS!.Value)} of wind: above {words.Speed(StationAudit.CalmMPerS)} much of the spray drifts, and the cups show the wind. Test again on a calm morning.",
            AuditRemark.WindUnknown => $"the wind is not written down: above {words.Speed(StationAudit.CalmMPerS)} the test says little.",
            AuditRemark.Together => "measured together: each gets the rate of the ground that they share.",
            AuditRemark.RateDiffers => $"{words.Rate(audit.Audit.RateMmPerHour)} is {Tables.Plain.Fixed(100 * Math.Abs(audit.RateChange), 0)} % {(audit.RateChange > 0 ? "above" : "below")} the {words.Rate(audit.Station.Rate.MmPerHour)} of the description ({RateKnownWord.Of(audit.Station.RateKnown)}). Look at pressure, nozzles and arcs, and at the units of the readings.",
            AuditRemark.Uneven => "poor uniformity: level the heads, clear and match the nozzles, look at pressure and spacing before more water is used.",
            _ => "the lowest quarter of the cups got nothing, and so nothing of this run is stored. Mend the heads and test again.",
        };
    }
}
