using DailyAdjust.Core.Weather;

namespace DailyAdjust.Reports.Tables;

/// <summary>Stored weather days under the columns that <c>weather</c> prints; empty = unknown.</summary>
public static class WeatherTable
{
    public static IReadOnlyList<string> Columns { get; } =
        ["date", "station", "eto_mm", "eto_basis", "rain_mm", "tmax_c", "tmin_c", "estimated", "rain_by_gauge", "set_aside", "marks"];

    /// <summary>rain_mm is the rain of the site's first gauge; rain_by_gauge names every gauge: "yard=12.7000;range=" (unknown); set_aside counts the values that were not used.</summary>
    public static Table Of(IEnumerable<WeatherDay> days) => new(Columns, [.. days.Select(Row)]);

    private static IReadOnlyList<Cell> Row(WeatherDay day) =>
    [
        Cell.Date(day.Date),
        Cell.Text(day.Station),
        Cell.Fixed(day.EtoMm, 4),
        Cell.Text(EtoBasisCode.Of(day.Basis)),
        Cell.Fixed(day.Rain.Count > 0 ? day.Rain[0].RainMm : null, 4),
        Cell.Fixed(day.AirTemperatureMaxC, 4),
        Cell.Fixed(day.AirTemperatureMinC, 4),
        Cell.Text(string.Join("; ", day.Estimated)),
        Cell.Text(string.Join(";", day.Rain.Select(r => r.Gauge + "=" + Cell.Fixed(r.RainMm, 4).Written))),
        Cell.Fixed(day.SetAside.Sum(s => s.Values), 0),
        Cell.Text(string.Join("; ", day.Marks.Concat(day.Rain.Where(r => r.Substitute.Length > 0).Select(r => $"rain of gauge {r.Gauge}: gauge {r.Substitute} stands in")))),
    ];
}
