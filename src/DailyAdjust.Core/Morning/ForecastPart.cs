using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Morning;

/// <summary>What is forecast, as the sheet shows it: noted, never measured and never booked.</summary>
/// <param name="Issued">When the newest forecast was made, UTC.</param>
/// <param name="TooOld">It is older than the site allows: no number rests on it, and no day is shown.</param>
/// <param name="Days">From the sheet's date on.</param>
public sealed record SheetForecast(DateTimeOffset Issued, bool TooOld, IReadOnlyList<ForecastDay> Days);

/// <summary>Lays out the forecast for the sheet.</summary>
internal static class ForecastPart
{
    private const int DaysShown = 7;

    /// <summary>Null = there is none.</summary>
    public static SheetForecast? Of(MorningInputs inputs, Site site) => inputs.ForecastIssued is { } issued
        ? new(issued, inputs.AsOf - issued > site.Report.WeatherMaxAge, [.. inputs.Forecast.Take(DaysShown)])
        : null;

    /// <summary>The sentence about values that were set aside; null = there are none.</summary>
    public static Phrase? SetAside(IReadOnlyList<SetAsideValue> values) => values.Count == 0
        ? null
        : Phrase.Of($"Forecast: {Phrase.Count(values.Count, "value", "values")} set aside: {values[0].What} ({RecordedWords.Of(values[0].Why)}){(values.Count > 1 ? $" and {values.Count - 1} more" : Phrase.Empty)}.");
}
