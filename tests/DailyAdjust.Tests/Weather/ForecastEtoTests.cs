using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

public class ForecastEtoTests
{
    private static readonly DateOnly Lyon = new(2026, 7, 15);

    // [FAO56] example 20, p. 77-78: 45.72 N, July, 26.6 and 14.8 °C: eq. 52 gives 5.0 mm a day.
    private static readonly ForecastDay Example = new(Lyon, 26.6, 14.8);

    [Fact]
    public void Without_known_days_it_is_the_plain_equation() =>
        Assert.Equal(5.0, ForecastEto.For(Lyon, Lyon, [Example], [], 45.72)!.Value, 0.05);

    [Fact]
    public void It_is_scaled_by_what_the_last_30_days_were_of_theirs()
    {
        // Yesterday had the same temperatures and drew 4.0: so will today, to the little that the sun has moved.
        WeatherDay[] known = [Day(-1, 4), Day(-31, 40), Day(-2, 9) with { Basis = EtoBasis.Expected }, Day(-3, 9) with { AirTemperatureMaxC = null }];
        Assert.Equal(4.0, ForecastEto.For(Lyon, Lyon, [Example], known, 45.72)!.Value, 0.03);
    }

    [Fact]
    public void A_day_that_is_not_forecast_has_none() => Assert.Null(ForecastEto.For(Lyon.AddDays(1), Lyon, [Example], [], 45.72));

    private static WeatherDay Day(int n, double eto) => new()
    {
        Date = Lyon.AddDays(n),
        Station = "yard",
        EtoMm = eto,
        Basis = EtoBasis.Hourly,
        AirTemperatureMaxC = 26.6,
        AirTemperatureMinC = 14.8,
        Rain = [],
    };
}
