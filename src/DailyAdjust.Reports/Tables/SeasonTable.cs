using System.Globalization;
using DailyAdjust.Core.Plan;

namespace DailyAdjust.Reports.Tables;

/// <summary>Percentages through the year under the columns that <c>season</c> prints; mm; empty = unknown.</summary>
public static class SeasonTable
{
    public static IReadOnlyList<string> Columns { get; } =
    [
        "controller", "program", "month", "percent", "exact_percent", "need_mm", "effective_rain_mm", "effective_rain_basis", "percent_after_rain", "exact_percent_after_rain", "effective_rain_years",
    ];

    public static Table Of(IReadOnlyList<ProgramSeason> seasons) => new(Columns, [.. seasons.SelectMany(s => s.Months.Select(m => Row(s, m)))]);

    /// <summary>A line per program, and a second one with rain taken off where some month's is known.</summary>
    public static Table Summary(IReadOnlyList<ProgramSeason> seasons) => new(
        ["controller", "program", "rain", .. Enumerable.Range(1, 12).Select(m => CultureInfo.InvariantCulture.DateTimeFormat.AbbreviatedMonthNames[m - 1])],
        [.. seasons.SelectMany(IEnumerable<IReadOnlyList<Cell>> (s) => s.Months.Any(m => m.AfterRain is not null)
            ? [Line(s, "none", m => m.NoRain), Line(s, "usual", m => m.AfterRain)]
            : [Line(s, "none", m => m.NoRain)])]);

    private static IReadOnlyList<Cell> Line(ProgramSeason season, string rain, Func<MonthPercent, SeasonNumber?> number) =>
    [
        Cell.Text(season.Key.Controller), Cell.Text(season.Key.Program), Cell.Text(rain), .. season.Months.Select(m => Cell.Short(number(m)?.Percent)),
    ];

    private static IReadOnlyList<Cell> Row(ProgramSeason season, MonthPercent month) =>
    [
        Cell.Text(season.Key.Controller),
        Cell.Text(season.Key.Program),
        Cell.Fixed(month.Month, 0),
        Cell.Short(month.NoRain.Percent),
        Cell.Fixed(month.NoRain.ExactPercent, 4),
        Cell.Fixed(month.NeedMm, 4),
        Cell.Fixed(month.Rain?.Mm, 4),
        month.Rain is { } rain ? Cell.Text(rain.FromNormals ? "normals" : "days") : Cell.Empty,
        Cell.Short(month.AfterRain?.Percent),
        Cell.Fixed(month.AfterRain?.ExactPercent, 4),
        Cell.Fixed(month.Rain?.Years, 0),
    ];
}
