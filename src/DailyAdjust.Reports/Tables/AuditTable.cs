using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Tables;

/// <summary>Catch cups by station under the columns that <c>audit</c> prints; mm and mm/h; empty = unknown.</summary>
public static class AuditTable
{
    public static IReadOnlyList<string> Columns { get; } =
    [
        "controller", "station", "name", "area", "cups", "run_min", "mean_mm", "lowest_quarter_mm", "rate_mm_h", "rate_before_mm_h", "rate_before_known",
        "uniformity_percent", "uniformity_class", "multiplier", "wind_m_s", "remarks",
    ];

    public static Table Of(IReadOnlyList<StationAudit> audits) => new(Columns, [.. audits.Select(Row)]);

    /// <summary>What a person looks at, in the site's units.</summary>
    public static Table Summary(Site site, IReadOnlyList<StationAudit> audits)
    {
        var words = SiteWords.Of(site);
        return new(
            ["station", "name", "cups", "min", $"mean ({words.DepthUnit})", $"rate ({words.RateUnit})", "before", "", "uniformity", "", "multiplier"],
            [.. audits.Select(IReadOnlyList<Cell> (a) =>
            [
                Cell.Text(a.Station.Key.ToString()),
                Cell.Text(a.Station.Name),
                Cell.Fixed(a.Audit.Cups.DepthsMm.Count, 0),
                Cell.Short(a.Audit.Cups.Minutes),
                new(words.DepthNumber(a.Audit.MeanMm).ToString(), IsNumber: true),
                new(words.RateNumber(a.Audit.RateMmPerHour), IsNumber: true),
                new(words.RateNumber(a.Station.Rate.MmPerHour), IsNumber: true),
                Cell.Text(RateKnownWord.Of(a.Station.RateKnown)),
                new(Plain.Fixed(100 * a.Audit.LowerQuarter, 0) + " %", IsNumber: true),
                Cell.Text(AuditWords.Class(a.Audit.Class)),
                Cell.Fixed(a.Audit.Multiplier, 2),
            ])]);
    }

    private static IReadOnlyList<Cell> Row(StationAudit audit)
    {
        var (station, found) = (audit.Station, audit.Audit);
        return
        [
            Cell.Text(station.Key.Controller),
            Cell.Text(station.Key.Station),
            Cell.Text(station.Name),
            Cell.Text(station.Area.Name),
            Cell.Fixed(found.Cups.DepthsMm.Count, 0),
            Cell.Short(found.Cups.Minutes),
            Cell.Fixed(found.MeanMm, 4),
            Cell.Fixed(found.LowestMm, 4),
            Cell.Fixed(found.RateMmPerHour, 4),
            Cell.Fixed(station.Rate.MmPerHour, 4),
            Cell.Text(RateKnownWord.Of(station.RateKnown)),
            Cell.Fixed(100 * found.LowerQuarter, 2),
            Cell.Text(AuditWords.Code(found.Class)),
            Cell.Fixed(found.Multiplier, 4),
            Cell.Fixed(found.Cups.WindMPerS, 2),
            Cell.Text(string.Join(';', audit.Remarks.Select(AuditWords.Code))),
        ];
    }
}
