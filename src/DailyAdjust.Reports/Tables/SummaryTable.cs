using DailyAdjust.Core.Water;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Tables;

/// <summary>The books of a span as tables: for people in the site's units, for files under fixed columns.</summary>
public static class SummaryTable
{
    private const double LitresPerM3 = 1000;

    /// <summary>Of <c>summary --format csv</c> by day or month; empty = unknown.</summary>
    public static IReadOnlyList<string> Columns { get; } = ["from", "to", "estimated_m3", "estimated_gal", "eto_mm", "rain_mm", "rain_unknown_days", "metered_m3", "metered_gal", "metered_from", "metered_to"];

    /// <summary>The same by program.</summary>
    public static IReadOnlyList<string> ProgramColumns { get; } = ["from", "to", "controller", "program", "name", "estimated_m3", "estimated_gal", "skips", "left_out_m3"];

    /// <summary>The same by area.</summary>
    public static IReadOnlyList<string> AreaColumns { get; } =
        ["from", "to", "area", "estimated_m3", "estimated_gal", "irrigation_mm", "drainage_mm", "days_beyond_allowable", "worst_zone", "worst_days"];

    /// <summary>The same of the span as a whole: one row of the estimate, one of the meter where it tells, one for each limit.</summary>
    public static IReadOnlyList<string> TotalColumns { get; } = ["kind", "from", "to", "used_m3", "used_gal", "limit_m3", "metered", "times_passed"];

    public static Table ByDay(WaterBooks books) => new(Columns, [.. books.Days.Select(d => Row(books, [d]))]);

    public static Table ByMonth(WaterBooks books) => new(Columns, [.. books.Days.GroupBy(d => (d.Date.Year, d.Date.Month)).Select(g => Row(books, [.. g]))]);

    public static Table ByProgram(WaterBooks books) => new(ProgramColumns, [.. books.Programs.Select(p => (IReadOnlyList<Cell>)
    [
        Cell.Date(books.From), Cell.Date(books.To), Cell.Text(p.Program?.Controller), Cell.Text(p.Program?.Program), Cell.Text(p.Program is null ? SummaryWords.ByHand : p.Name),
        .. Volume(p.EstimatedL), Cell.Fixed(p.Skips, 0), Cell.Fixed(p.SavedL / LitresPerM3, 3),
    ])]);

    public static Table ByArea(WaterBooks books) => new(AreaColumns, [.. books.Areas.Select(a => (IReadOnlyList<Cell>)
    [
        Cell.Date(books.From), Cell.Date(books.To), Cell.Text(a.Area), .. Volume(a.EstimatedL), Cell.Fixed(a.IrrigationMm, 4), Cell.Fixed(a.DrainedMm, 4),
        Cell.Fixed(a.DaysBeyond, 4), Cell.Text(a.WorstZone), Cell.Fixed(a.WorstDays, 0),
    ])]);

    public static Table Totals(WaterBooks books)
    {
        var rows = new List<IReadOnlyList<Cell>> { Total("span", books.From, books.To, books.EstimatedL, null, isMetered: false, null) };
        if (books.Metered is { } metered)
        {
            rows.Add(Total("span", metered.From, metered.To, metered.Litres, null, isMetered: true, null));
        }

        if (books.YearBefore is { } before)
        {
            rows.Add(Total("year-before", before.From, before.To, before.EstimatedL, null, isMetered: false, null));
        }

        rows.AddRange(books.Limits.Where(l => l.Kind != LimitKind.Rate).Select(l => Total(KindOf(l.Kind), l.From, LastOf(l, books.To), l.Used, l.Limit, l.IsMetered, l.Over)));
        return new(TotalColumns, rows);
    }

    internal static Table Programs(WaterBooks books, SiteWords words) => new(
        [SummaryWords.ByProgram, SummaryWords.Water, SummaryWords.Share, SummaryWords.Skips, SummaryWords.LeftOut],
        [.. books.Programs.Select(p => (IReadOnlyList<Cell>)
        [
            Cell.Text(SummaryWords.Name(p)), Number(words.Volume(p.EstimatedL)), Number(SummaryWords.ShareOf(p.EstimatedL, books)), Cell.Fixed(p.Skips, 0), Number(p.SavedL > 0 ? words.Volume(p.SavedL) : ""),
        ])]);

    internal static Table Areas(WaterBooks books, SiteWords words) => new(
        [SummaryWords.ByArea, SummaryWords.Water, SummaryWords.Irrigation, SummaryWords.Drained, SummaryWords.Beyond, SummaryWords.Worst],
        [.. books.Areas.Select(a => (IReadOnlyList<Cell>)
        [
            Cell.Text(a.Area), Number(words.Volume(a.EstimatedL)), Number(words.DepthOf(a.IrrigationMm).ToString()), Number(words.DepthOf(a.DrainedMm).ToString()), Number(SummaryWords.DaysBeyond(a)), Cell.Text(SummaryWords.WorstOf(a)),
        ])]);

    private static Cell Number(string written) => new(written, IsNumber: true);

    private static IReadOnlyList<Cell> Row(WaterBooks books, IReadOnlyList<DayWater> days)
    {
        var unknown = days.Count(d => d.RainMm is null);
        return
        [
            Cell.Date(days[0].Date), Cell.Date(days[^1].Date), .. Volume(days.Sum(d => d.EstimatedL)), Cell.Fixed(days.Sum(d => d.EtoMm), 4),
            Cell.Fixed(unknown == days.Count ? null : days.Sum(d => d.RainMm ?? 0), 4), Cell.Fixed(unknown, 0),
            .. Metered([.. books.MeterSteps.Where(s => s.To >= days[0].Date && s.To <= days[^1].Date)]),
        ];
    }

    /// <summary>What meters say stands where they were read, with the dates of its two readings: a month's rows together are what went through them.</summary>
    private static Cell[] Metered(IReadOnlyList<MeteredWater> steps) => steps.Count == 0 || steps.Any(s => s.Litres < 0)
        ? [Cell.Empty, Cell.Empty, Cell.Empty, Cell.Empty]
        : [.. Volume(steps.Sum(s => s.Litres)), Cell.Date(steps.Min(s => s.From)), Cell.Date(steps.Max(s => s.To))];

    private static Cell[] Volume(double litres) => [Cell.Fixed(litres / LitresPerM3, 3), Cell.Fixed(litres / SiteWords.LitresPerGallon, 0)];

    private static IReadOnlyList<Cell> Total(string kind, DateOnly from, DateOnly to, double litres, double? limit, bool isMetered, int? passed) =>
        [Cell.Text(kind), Cell.Date(from), Cell.Date(to), .. Volume(litres), Cell.Fixed(limit / LitresPerM3, 3), Cell.Text(isMetered ? "yes" : "no"), Cell.Fixed(passed, 0)];

    private static DateOnly LastOf(LimitUse use, DateOnly to) => use.Kind switch
    {
        LimitKind.Day => use.From,
        LimitKind.Month when use.From.AddMonths(1).AddDays(-1) is var last && last < to => last,
        _ => to,
    };

    private static string KindOf(LimitKind kind) => kind switch
    {
        LimitKind.Allotment => "allotment",
        LimitKind.Day => "permit-day",
        LimitKind.Month => "permit-month",
        LimitKind.Year => "permit-year",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}
