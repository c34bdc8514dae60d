using DailyAdjust.Core.Irrigation;

namespace DailyAdjust.Reports.Tables;

/// <summary>Stored zone days under the columns that <c>balance</c> prints; mm; empty = unknown.</summary>
public static class BalanceTable
{
    public static IReadOnlyList<string> Columns { get; } =
    [
        "date", "controller", "station", "area", "eto_mm", "k", "ks", "etc_mm", "rain_mm", "intercepted_mm", "runoff_mm",
        "irrigation_mm", "hose_mm", "drainage_mm", "probe_mm", "depletion_mm", "raw_mm", "taw_mm",
    ];

    private const int Decimals = 4;

    private static readonly Func<ZoneDay, double?>[] Numbers =
    [
        day => day.EtoMm, day => day.K, day => day.Ks, day => day.EtcMm, day => day.RainMm, day => day.InterceptedMm, day => day.RunoffMm,
        day => day.IrrigationMm, day => day.HoseMm, day => day.DrainageMm, day => day.ProbeMm, day => day.DepletionMm, day => day.RawMm, day => day.TawMm,
    ];

    public static Table Of(IEnumerable<ZoneDay> days) => new(Columns, [.. days.Select(Row)]);

    /// <summary>The rows of <see cref="Of"/> as CSV, without its header, for a table that is printed in parts.</summary>
    /// <param name="days">Of one date.</param>
    /// <param name="into">Is added to.</param>
    public static void AddLines(IReadOnlyList<ZoneDay> days, CsvLines into)
    {
        var date = days.Count > 0 ? Cell.Date(days[0].Date).Written : "";
        foreach (var day in days)
        {
            into.Text(date);
            into.Text(day.Station.Controller);
            into.Text(day.Station.Station);
            into.Text(day.Area);
            foreach (var number in Numbers)
            {
                into.Fixed(number(day), Decimals);
            }

            into.End();
        }
    }

    private static IReadOnlyList<Cell> Row(ZoneDay day) =>
    [
        Cell.Date(day.Date),
        Cell.Text(day.Station.Controller),
        Cell.Text(day.Station.Station),
        Cell.Text(day.Area),
        .. Numbers.Select(number => Cell.Fixed(number(day), Decimals)),
    ];
}
