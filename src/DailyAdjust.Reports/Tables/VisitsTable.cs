using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Tables;

/// <summary>Boxes and what leaving each costs, a row per program, under the columns that <c>visits</c> prints; metric; empty = none, or unknown.</summary>
public static class VisitsTable
{
    public static IReadOnlyList<string> Columns { get; } =
    [
        "date", "rank", "go", "controller", "program", "advice", "percent", "next_visit", "wasted_mm", "wasted_l", "zones_beyond", "days_beyond", "beyond_mm", "cost",
    ];

    /// <param name="visits">The morning's boxes.</param>
    /// <param name="boxes">How many can be opened, 1 or more; null = all.</param>
    public static Table Of(VisitsToday visits, int? boxes) =>
        new(Columns, [.. visits.Boxes.SelectMany((box, i) => Rows(visits.Date, i + 1, i < (boxes ?? int.MaxValue), box))]);

    private static IEnumerable<IReadOnlyList<Cell>> Rows(DateOnly date, int rank, bool go, BoxVisit box)
    {
        IReadOnlyList<Cell> Row(ProgramKey program, AdviceKind advice, params IReadOnlyList<Cell> rest) =>
        [
            Cell.Date(date), Cell.Fixed(rank, 0), Cell.Text((go ? CommonWords.Yes : CommonWords.No).ToString()), Cell.Text(program.Controller), Cell.Text(program.Program), Cell.Text(AdviceCode.Of(advice)), .. rest,
        ];
        foreach (var order in box.Orders)
        {
            yield return Row(order.Program, AdviceKind.Off, [.. Enumerable.Repeat(Cell.Empty, 8)]);
        }

        foreach (var worth in box.Programs)
        {
            yield return Row(
                worth.Program, worth.Advice,
                [
                    Cell.Short(worth.Percent), Cell.Date(worth.NextVisit), Cell.Fixed(worth.WastedMm, 4), Cell.Fixed(worth.WastedL, 1),
                    Cell.Fixed(worth.ZonesBeyond, 0), Cell.Fixed(worth.DaysBeyond, 0), Cell.Fixed(worth.BeyondMm, 4), Cell.Fixed(worth.Cost, 6),
                ]);
        }
    }
}
