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

    public static Table Of(IEnumerable<ZoneDay> days) => new(Columns, [.. days.Select(Row)]);

    private static IReadOnlyList<Cell> Row(ZoneDay day) =>
    [
        Cell.Date(day.Date),
        Cell.Text(day.Station.Controller),
        Cell.Text(day.Station.Station),
        Cell.Text(day.Area),
        Number(day.EtoMm),
        Number(day.K),
        Number(day.Ks),
        Number(day.EtcMm),
        Number(day.RainMm),
        Number(day.InterceptedMm),
        Number(day.RunoffMm),
        Number(day.IrrigationMm),
        Number(day.HoseMm),
        Number(day.DrainageMm),
        Number(day.ProbeMm),
        Number(day.DepletionMm),
        Number(day.RawMm),
        Number(day.TawMm),
    ];

    private static Cell Number(double? value) => Cell.Fixed(value, 4);
}
