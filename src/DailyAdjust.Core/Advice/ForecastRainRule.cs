using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Advice;

/// <summary>
/// When forecast rain may let a program skip: the site allows it, and on one calendar day between now and the next visit the forecast reaches both of
/// the site's thresholds. Whether the ground can wait is judged without that rain: it never enters a balance.
/// </summary>
internal static class ForecastRainRule
{
    private const double Tolerance = 1e-9;

    /// <summary>The first such day's rain; null = there is none, or nothing is forecast.</summary>
    public static RainAhead? LetsSkip(AdviceContext context, ProgramCase program)
    {
        var rule = context.Site.Weather.ForecastRain;
        if (!rule.MaySkip)
        {
            return null;
        }

        foreach (var day in context.Forecast)
        {
            var rain = RainAhead.Sum([.. day.Rain.Select(r => r.Within(context.AsOf, program.Horizon.Closes)).OfType<RainAhead>()]);
            if (rain?.Mm >= rule.LeastAmountMm - Tolerance && rain.ChancePercent >= rule.LeastChancePercent - Tolerance)
            {
                return rain;
            }
        }

        return null;
    }
}
