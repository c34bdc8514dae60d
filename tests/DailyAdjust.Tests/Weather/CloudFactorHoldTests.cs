using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

public sealed class CloudFactorHoldTests
{
    private static readonly DateTimeOffset Noon = new(2026, 6, 10, 12, 0, 0, TimeSpan.Zero);
    private static readonly double Unknown = (1.35 * 0.7) - 0.35;

    [Fact]
    public void Before_the_first_high_sun_the_sky_is_taken_as_seven_tenths_clear() =>
        Assert.Equal(Unknown, At(CloudFactorHold.Start, 0, 0.29, 1).Factor, 1e-12);

    [Fact]
    public void A_high_sun_computes_it_within_its_limits()
    {
        Assert.Equal((1.35 * 0.5) - 0.35, At(CloudFactorHold.Start, 0, 0.3, 1.5).Factor, 1e-12);
        Assert.Equal(1, At(CloudFactorHold.Start, 0, 1, 4).Factor, 1e-12);
        Assert.Equal((1.35 * 0.3) - 0.35, At(CloudFactorHold.Start, 0, 1, 0.1).Factor, 1e-12);
    }

    [Fact]
    public void A_low_sun_holds_the_last_value_across_midnight_and_no_longer_than_a_day()
    {
        var computed = At(CloudFactorHold.Start, 0, 1, 1.5);
        Assert.Equal(computed.Factor, At(computed, 14, 0.1, 0).Factor);
        Assert.Equal(computed.Factor, At(computed, 25, 0.1, 0).Factor);
        Assert.Equal(Unknown, At(computed, 26, 0.1, 0).Factor, 1e-12);
    }

    [Fact]
    public void An_unknown_radiation_computes_nothing()
    {
        var computed = At(CloudFactorHold.Start, 0, 1, 1.5);
        Assert.Equal(computed.Factor, At(computed, 1, 1, double.NaN).Factor);
    }

    private static CloudFactorHold At(CloudFactorHold held, int hour, double elevationRad, double solar) =>
        held.Next(Noon.AddHours(hour), Noon.AddHours(hour + 1), elevationRad, solar, 3);
}
