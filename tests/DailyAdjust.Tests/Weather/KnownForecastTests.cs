using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

/// <summary>Which forecasts count at an instant.</summary>
public class KnownForecastTests
{
    private static readonly DateTimeOffset Now = new(2026, 6, 8, 10, 0, 0, TimeSpan.Zero);
    private static readonly TimeSpan TwoDays = TimeSpan.FromDays(2);

    [Fact]
    public void One_made_later_is_not_known_however_early_it_arrived()
    {
        var known = KnownForecast.Of([Made(minutes: 1, 30), Made(minutes: 0, 20)], Now, TwoDays)!;
        Assert.Equal((Now, 20d), (known.Issued, known.Readings[0].AirTemperatureC));
        Assert.Null(KnownForecast.Of([Made(minutes: 1, 30)], Now, TwoDays));
        Assert.Null(KnownForecast.Of([], Now, TwoDays));
    }

    [Fact]
    public void The_one_made_last_counts_even_if_an_older_one_arrives_after_it()
    {
        var known = KnownForecast.Of([Made(minutes: -60, 21), Made(minutes: -600, 15)], Now, TwoDays)!;
        Assert.Equal(21, known.Readings[0].AirTemperatureC);

        // Made at the same instant: the later arrival is a correction.
        Assert.Equal(22, KnownForecast.Of([Made(minutes: -60, 21), Made(minutes: -60, 22)], Now, TwoDays)!.Readings[0].AirTemperatureC);
    }

    [Fact]
    public void A_value_that_is_missing_later_keeps_the_earlier_one()
    {
        var known = KnownForecast.Of([Made(minutes: -600, 15), Made(minutes: -60, double.NaN)], Now, TwoDays)!;
        Assert.Equal((Now.AddMinutes(-60), 15d), (known.Issued, known.Readings[0].AirTemperatureC));
    }

    [Fact]
    public void One_that_is_too_old_is_not_used_and_its_age_is_known()
    {
        var minute = TimeSpan.FromMinutes(1);
        Assert.Single(KnownForecast.Of([Made(minutes: -2880, 15)], Now, TwoDays)!.Readings);
        var old = KnownForecast.Of([Made(minutes: -2881, 15)], Now, TwoDays)!;
        Assert.Empty(old.Readings);
        Assert.Equal(Now - TwoDays - minute, old.Issued);

        // Nor does it fill the gaps of a newer one.
        Assert.True(double.IsNaN(KnownForecast.Of([Made(minutes: -2881, 15), Made(minutes: 0, double.NaN)], Now, TwoDays)!.Readings[0].AirTemperatureC));
    }

    [Fact]
    public void A_stored_block_comes_back_with_its_time()
    {
        var made = Made(minutes: -7, 15.25);
        var back = ForecastBlock.Read(ForecastBlock.Write(made));
        Assert.Equal(made.Issued, back.Issued);
        Assert.Equal(made.Readings, back.Readings);
        Assert.Throws<InvalidDataException>(() => ForecastBlock.Read([1, 2, 3]));
        Assert.Throws<InvalidDataException>(() => ForecastBlock.Read([0, 0, 0, 0, 0, 0, 0, 0x80, 1]));
        Assert.Throws<InvalidDataException>(() => ForecastBlock.Read(ForecastBlock.Write(made).AsSpan()[..^1]));
    }

    private static IssuedForecast Made(int minutes, double celsius) =>
        new(Now.AddMinutes(minutes), [new Reading { Begin = Now.AddHours(5), End = Now.AddHours(6), AirTemperatureC = celsius }]);
}
