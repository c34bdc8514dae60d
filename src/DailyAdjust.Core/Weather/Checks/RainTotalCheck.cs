using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>A running total of rain that cannot be true beside those before and after it; <see cref="RainCounter"/> makes it.</summary>
internal static class RainTotalCheck
{
    public static WeatherCheck About { get; } = new(
        "rain_total",
        "a running total of rain that is wrong for a while, or that grew while nobody can say on which day",
        "below 0; fell and came back to what it was, or (nothing later is known) fell to more than half; grew and came back; grew by more than 50 mm in one step and is not confirmed by the next total; grew over a silence across midnight. A fall that lasts is a beginning "
            + "at 0, and so is one at midnight of a counter that began the date before at 1 mm or less",
        WeatherCheck.IsSetAside + "; what fell meanwhile is in the next good total, or (over midnight) both days' rain is unknown and asked for",
        "common practice",
        [WeatherQuantity.Rain]);
}
