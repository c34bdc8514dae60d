using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

/// <summary>From a forecast's hours to days and nights, at a site near Chicago's longitude zone: the sun rises about 05:50 on 8 June 2026.</summary>
public class ForecastDaysTests
{
    private static readonly DateOnly Date = new(2026, 6, 8);
    private static readonly WeatherScene Scene = new();
    private static readonly Site Site = Scene.Site with { Weather = Scene.Site.Weather with { Forecast = WeatherScene.Source(WeatherSetup.ForecastId) } };

    [Fact]
    public void A_day_has_its_highest_and_lowest_hour()
    {
        var days = Of(Hours(0, 72));
        Assert.Equal([Date, Date.AddDays(1), Date.AddDays(2)], days.Select(d => d.Date));
        Assert.All(days, d => Assert.Equal((27d, 13d, 24d), (d.AirTemperatureMaxC!.Value, d.AirTemperatureMinC!.Value, d.TemperatureHours)));
    }

    [Theory]
    [InlineData(22, true)] // 91.7 % of 24 hours
    [InlineData(21, false)] // 87.5 %
    public void A_day_counts_if_nine_tenths_of_its_hours_are_forecast(int hours, bool counts)
    {
        var tomorrow = Of(Hours(0, 24 + hours))[1];
        Assert.Equal((counts, counts, (double)hours), (tomorrow.AirTemperatureMaxC is not null, tomorrow.AirTemperatureMinC is not null, tomorrow.TemperatureHours));
    }

    [Theory]
    [InlineData(5, true)]
    [InlineData(7, true)] // 17 of the 18.2 hours since sunrise
    [InlineData(8, false)]
    [InlineData(14, false)] // an afternoon forecast knows no lowest
    public void The_running_day_is_asked_for_its_hours_since_sunrise(int firstHour, bool counts) =>
        Assert.Equal(counts, Of(Hours(firstHour, 48 - firstHour))[0].AirTemperatureMinC is not null);

    [Fact]
    public void A_day_of_25_hours_needs_nine_tenths_of_them()
    {
        var autumn = new DateOnly(2026, 11, 1);
        Assert.Equal(25, Of(Hours(0, 49, autumn.AddDays(-1)), autumn.AddDays(-1))[1].TemperatureHours);
        Assert.Null(Of(Hours(0, 24 + 22, autumn.AddDays(-1)), autumn.AddDays(-1))[1].AirTemperatureMaxC); // 22 of 25
        Assert.NotNull(Of(Hours(0, 24 + 23, autumn.AddDays(-1)), autumn.AddDays(-1))[1].AirTemperatureMaxC);
    }

    [Fact]
    public void Published_extremes_count_where_they_go_beyond_the_hours()
    {
        var hours = Hours(0, 48).Select(r => Hour(r) == 15 ? r with { AirTemperatureMaxC = 28.4 } : Hour(r) == 5 ? r with { AirTemperatureMinC = 14 } : r);
        var day = Of([.. hours])[1];
        Assert.Equal((28.4, 13d), (day.AirTemperatureMaxC, day.AirTemperatureMinC));
    }

    [Fact]
    public void A_forecast_by_the_day_tells_extremes_and_no_mean()
    {
        var daily = Enumerable.Range(0, 3).Select(d => Daily(d) with { AirTemperatureMaxC = 25 + d, AirTemperatureMinC = 10 + d, AirTemperatureC = 18, WindSpeedMPerS = 3, RainMm = 12, RainChancePercent = 40 }).ToList();
        var days = Of(daily);
        Assert.Equal([25d, 26, 27], days.Select(d => d.AirTemperatureMaxC!.Value));
        Assert.Equal([11d, 12, null], days.Select(d => d.Night.LowestTemperatureC)); // the lowest of the night falls on the morning after
        Assert.All(days, d => Assert.Null(d.Night.HighestWindMPerS));
        Assert.Equal((9.5, 40d), (days[0].DayRain!.Mm!.Value, days[0].DayRain!.ChancePercent!.Value)); // 19 of its 24 hours are still to come
        Assert.All(Of([.. daily.Select(d => d with { AirTemperatureMaxC = double.NaN, AirTemperatureMinC = double.NaN })]), d => Assert.Null(d.AirTemperatureMaxC));
    }

    [Fact]
    public void Rain_of_the_running_day_is_what_is_still_to_come()
    {
        var readings = Hours(0, 24).Select(r => r with { RainMm = 1, RainChancePercent = Hour(r) == 4 ? 95 : Hour(r) }).ToList();
        var rain = Of(readings)[0].DayRain!;
        Assert.Equal((19d, 23d), (rain.Mm!.Value, rain.ChancePercent!.Value));
        Assert.Equal(19.5, Of(readings, asOf: At(4).AddMinutes(30))[0].DayRain!.Mm!.Value, 1e-9);
    }

    [Fact]
    public void Missing_is_not_zero()
    {
        var chanceOnly = Of([.. Hours(0, 24).Select(r => r with { RainChancePercent = 30 })])[0].DayRain!;
        Assert.Equal((null, 30d), (chanceOnly.Mm, chanceOnly.ChancePercent));
        Assert.Null(Of(Hours(0, 24))[0].DayRain);
        Assert.Empty(Of([]));
    }

    [Fact]
    public void The_night_reaches_from_six_to_nine()
    {
        var readings = Hours(0, 48).Select(r => r with { WindSpeedMPerS = r.Begin < At(18) || r.Begin >= At(33) ? 9 : r.Begin == At(30) ? 4 : 2, RainMm = r.Begin == At(17) || r.Begin == At(33) ? 50 : r.Begin == At(20) ? 3 : 0 }).ToList();
        var night = Of(readings)[0].Night;
        Assert.Equal((13d, 4d, 3d), (night.LowestTemperatureC!.Value, night.HighestWindMPerS!.Value, night.Rain!.Mm!.Value));

        // The last night is forecast to midnight only: its lowest is not known.
        Assert.Null(Of(readings)[1].Night.LowestTemperatureC);
    }

    [Fact]
    public void What_no_weather_can_have_is_set_aside_and_told()
    {
        var setAside = new List<SetAsideValue>();
        var readings = Hours(0, 48).Select(r => r.Begin == At(30) ? r with { AirTemperatureC = 600, RainChancePercent = 101, RainMm = -1 } : r).ToList();
        var days = ForecastDays.Of(Site, Date, At(5), readings, setAside);
        Assert.Equal((27d, 23d), (days[1].AirTemperatureMaxC!.Value, days[1].TemperatureHours));
        Assert.Null(days[1].DayRain);
        Assert.Equal(3, setAside.Count);
    }

    [Fact]
    public void Days_before_the_sheets_date_are_past() => Assert.Equal(Date, Of([.. Hours(0, 24, Date.AddDays(-1)), .. Hours(0, 24)])[0].Date);

    private static IReadOnlyList<ForecastDay> Of(IReadOnlyList<Reading> readings, DateOnly? date = null, DateTimeOffset? asOf = null) =>
        ForecastDays.Of(Site, date ?? Date, asOf ?? Scene.Clock.ToInstant(date ?? Date, new(5, 0)), readings, []);

    private static DateTimeOffset At(int hour) => Scene.Clock.DayStart(Date).AddHours(hour);

    private static int Hour(Reading r) => Scene.Clock.ToLocal(r.Begin).Hour;

    /// <summary>13 °C at 5 in the morning, 27 at 3 in the afternoon.</summary>
    private static List<Reading> Hours(int first, int count, DateOnly? date = null)
    {
        var begin = Scene.Clock.DayStart(date ?? Date).AddHours(first);
        return [.. Enumerable.Range(0, count).Select(h => new Reading { Begin = begin.AddHours(h), End = begin.AddHours(h + 1) })
            .Select(r => r with { AirTemperatureC = Hour(r) switch { 5 => 13, 15 => 27, _ => 20 } })];
    }

    private static Reading Daily(int day) => new() { Begin = Scene.Clock.DayStart(Date.AddDays(day)), End = Scene.Clock.DayEnd(Date.AddDays(day)) };
}
