using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Tables;

/// <summary>One line of advice.csv.</summary>
/// <param name="Date">The sheet's date.</param>
/// <param name="Program">Which.</param>
/// <param name="SettingPercent">The present setting, percent; 0 = off.</param>
/// <param name="Advice">What.</param>
/// <param name="Percent">Null for skip, off and as-set.</param>
/// <param name="ExactPercent">Null where none was computed.</param>
/// <param name="NextStart">On the site's clock.</param>
/// <param name="Finishes">On the site's clock.</param>
/// <param name="Reason">One sentence.</param>
public sealed record AdviceRow(
    DateOnly Date,
    ProgramKey Program,
    double SettingPercent,
    AdviceKind Advice,
    double? Percent,
    double? ExactPercent,
    DateTimeOffset? NextStart,
    DateTimeOffset? Finishes,
    string Reason)
{
    public static AdviceRow Of(DateOnly date, SiteClock clock, ProgramAdvice advice) => new(
        date,
        advice.Key,
        advice.Present.Percent,
        advice.Advice,
        advice.Advice is AdviceKind.Skip or AdviceKind.Off or AdviceKind.AsSet ? null : advice.Percent,
        advice.ExactPercent,
        advice.NextStart is { } start ? clock.ToLocal(start) : null,
        advice.Finishes is { } end ? clock.ToLocal(end) : null,
        advice.Reason.ToString());
}

/// <summary>Advice under the columns of advice.csv, which <c>advice</c> prints too.</summary>
public static class AdviceTable
{
    public static IReadOnlyList<string> Columns { get; } =
        ["date", "controller", "program", "setting", "advice", "percent", "exact_percent", "next_start", "finishes", "reason"];

    public static Table Of(IEnumerable<AdviceRow> rows) => new(Columns, [.. rows.Select(Row)]);

    private static IReadOnlyList<Cell> Row(AdviceRow row) =>
    [
        Cell.Date(row.Date),
        Cell.Text(row.Program.Controller),
        Cell.Text(row.Program.Program),
        Cell.Short(row.SettingPercent),
        Cell.Text(AdviceCode.Of(row.Advice)),
        Cell.Short(row.Percent),
        Cell.Fixed(row.ExactPercent, 4),
        Time(row.NextStart),
        Time(row.Finishes),
        Cell.Text(row.Reason),
    ];

    // Empty as a number is: unknown, not an empty text.
    private static Cell Time(DateTimeOffset? local) => local is { } time ? Cell.Text(CodeWords.Minute(time)) : Cell.Empty;
}
