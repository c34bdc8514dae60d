using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Morning;

/// <summary>What the sheet says of its weather. The morning is 17 June; sixteen days lie before it.</summary>
public sealed class FreshnessTests
{
    [Theory]
    [InlineData(EtoBasis.Expected, "no station reported a whole day")]
    [InlineData(EtoBasis.OtherStation, "taken from station yard")]
    [InlineData(EtoBasis.TemperatureOnly, "only temperatures were measured (station yard)")]
    [InlineData(EtoBasis.PartEstimated, "part of it estimated (station yard)")]
    public void What_is_assumed_is_told_of_the_last_seven_days(EtoBasis basis, string how)
    {
        var freshness = Of(day => day with { Basis = basis });

        Assert.Equal(7, freshness.Assumed.Count);
        Assert.All(freshness.Assumed, sentence => Assert.EndsWith($": {how}.", sentence.ToString(), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(EtoBasis.Hourly)]
    [InlineData(EtoBasis.Daily)]
    [InlineData(EtoBasis.Supplied)]
    public void What_was_measured_needs_no_word(EtoBasis basis) => Assert.Empty(Of(day => day with { Basis = basis }).Assumed);

    [Fact]
    public void Hours_of_rain_that_are_missing_are_told_and_whole_days_are_not()
    {
        var freshness = Of(day => day with { Rain = [.. day.Rain.Select(r => r with { MissingH = day.Date.Day % 2 * 2.25 })] });

        Assert.Equal(3, freshness.Assumed.Count); // 11, 13 and 15 of 10 to 16 June
        Assert.All(freshness.Assumed, sentence => Assert.Contains(": 2.3 h of gauge ", sentence.ToString(), StringComparison.Ordinal));
    }

    [Fact]
    public void The_last_fourteen_days_are_shown() =>
        Assert.Equal(Enumerable.Range(3, 14).Select(day => new DateOnly(2026, 6, day)), Of(day => day).RecentDays.Select(day => day.Date));

    private static Freshness Of(Func<WeatherDay, WeatherDay> change)
    {
        var inputs = ExampleInputs.Morning(ExampleInputs.Last);
        return MorningCalculation.Run(inputs with { Weather = [.. inputs.Weather.Select(change)] }).Freshness;
    }
}
