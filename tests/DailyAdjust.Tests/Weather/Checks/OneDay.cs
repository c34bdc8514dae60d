using DailyAdjust.Core.Weather;

namespace DailyAdjust.Tests.Weather.Checks;

/// <summary>A day of living weather at one station, to break one value of.</summary>
internal sealed record OneDay
{
    public static readonly DateOnly June = new(2026, 6, 10);

    public DateOnly Date { get; init; } = June;

    public double LatitudeDeg { get; init; } = 44.21;

    public int Minutes { get; init; } = 60;

    public IReadOnlyList<string> Accept { get; init; } = [];

    public WeatherScene Scene => new()
    {
        LatitudeDeg = LatitudeDeg,
        Stations = [WeatherScene.Source("yard", Minutes) with { Accept = Accept }],
    };

    /// <summary>Three days of weather that no check should find anything in, the day in their middle.</summary>
    public IReadOnlyList<Reading> Healthy => HealthyWeather.Of(Scene, Date.AddDays(-2), Date.AddDays(1), Minutes);

    public DateTimeOffset At(double hour) => Scene.Clock.DayStart(Date).AddHours(hour);

    /// <summary>The day with the readings that begin in these hours changed.</summary>
    public WeatherDay With(double fromHour, double toHour, Func<Reading, Reading> change) =>
        Of([.. Healthy.Select(r => r.Begin >= At(fromHour) && r.Begin < At(toHour) ? change(r) : r)]);

    /// <summary>The day with one hour changed.</summary>
    public WeatherDay With(double hour, Func<Reading, Reading> change) => With(hour, hour + (Minutes / 60.0), change);

    public WeatherDay Of(IReadOnlyList<Reading> readings) => Scene.Days(Date, Date, ("yard", readings))[0];

    /// <summary>The day of a station that reports once a day.</summary>
    public WeatherDay Daily(Func<Reading, Reading> change)
    {
        var day = this with { Minutes = 0 };
        var clock = day.Scene.Clock;
        return day.Of([change(new Reading
        {
            Begin = clock.DayStart(Date),
            End = clock.DayEnd(Date),
            AirTemperatureMaxC = 25,
            AirTemperatureMinC = 12,
            RelativeHumidityMaxPercent = 95,
            RelativeHumidityMinPercent = 45,
            WindSpeedMPerS = 2.2,
            SolarRadiationMJPerM2 = 5,
            RainMm = 0,
        })]);
    }
}
