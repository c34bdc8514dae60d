using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>A highest temperature below the lowest: columns that were swapped, or a broken row.</summary>
internal static class OrderCheck
{
    public static WeatherCheck About { get; } = new(
        "order",
        "a highest temperature below the lowest of the same interval",
        "any difference",
        WeatherCheck.IsSetAside + ", both; where overruled, the larger counts as the highest",
        "common practice",
        [WeatherQuantity.AirTemperatureMax, WeatherQuantity.AirTemperatureMin]);

    public static Reading Keep(Reading r, CheckNotes notes)
    {
        if (!(r.AirTemperatureMaxC < r.AirTemperatureMinC))
        {
            return r;
        }

        if (!notes.Source.Accepts(About, WeatherQuantity.AirTemperatureMin)
            && notes.IsAside(About, r, WeatherQuantity.AirTemperatureMax, r.AirTemperatureMaxC, "°C", "the highest temperature is below the lowest"))
        {
            notes.Note(About, r, WeatherQuantity.AirTemperatureMin, r.AirTemperatureMinC, "°C", "the lowest temperature is above the highest", 1);
            return r with { AirTemperatureMaxC = double.NaN, AirTemperatureMinC = double.NaN };
        }

        return r with { AirTemperatureMaxC = r.AirTemperatureMinC, AirTemperatureMinC = r.AirTemperatureMaxC };
    }
}
