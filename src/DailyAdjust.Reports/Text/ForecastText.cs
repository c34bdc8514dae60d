using DailyAdjust.Core.Phrases;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Text;

/// <summary>The forecast for a terminal: nothing where the site has none.</summary>
internal static class ForecastText
{
    /// <summary>A terminal shows today and the two days after it; the page has the rest.</summary>
    private const int DaysShown = 3;

    public static void Write(TextLines lines, SheetView view)
    {
        if (view.Sheet.Forecast is not { } forecast)
        {
            return;
        }

        lines.Add(ForecastWords.Made(forecast, view.Words));
        if (forecast.Days.Count == 0)
        {
            return;
        }

        lines.Add($"{Phrase.Join(". ", forecast.Days.Take(DaysShown).Select(day => ForecastWords.Day(day, view.Words)))}.", indent: 2);
        var night = forecast.Days[0].Night;
        lines.Add(Phrase.Join(" ", ForecastWords.Cautions(night, view.Words).Prepend(ForecastWords.Night(night, view.Words))), indent: 2, most: 4);
    }
}
