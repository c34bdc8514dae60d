using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather.Checks;

/// <summary>A cleaned bucket is no rain, and what fell is then not known.</summary>
public sealed class RainSpikeTests
{
    private static readonly OneDay Hours = new();

    [Fact]
    public void Ten_millimetres_under_dry_air_and_bright_sun_are_set_aside_and_the_day_is_unknown()
    {
        var day = Hours.With(12, 14, r => Bright(r, 10, 59.9, 0.81));
        Assert.Equal(["rain_spike rain"], Found(day));
        Assert.Equal(RainBasis.Unknown, day.RainAt("yard").Basis);
        Assert.Null(day.RainAt("yard").RainMm);
        Assert.Empty(day.RainAt("yard").Falls);
    }

    [Theory]
    [InlineData(9.9, 59.9, 0.81)]
    [InlineData(10, 60.1, 0.81)]
    [InlineData(10, 59.9, 0.78)]
    public void Less_rain_moister_air_or_less_sun_is_rain(double mm, double humidity, double clearness)
    {
        var day = Hours.With(12, 14, r => Bright(r, mm, humidity, clearness));
        Assert.Empty(Found(day));
        Assert.Equal(mm, day.RainAt("yard").RainMm);
    }

    [Fact]
    public void Where_one_of_air_and_sun_cannot_be_told_the_other_decides()
    {
        Assert.Equal(["rain_spike rain"], Found(Hours.With(12, 14, r => Bright(r, 10, double.NaN, 0.81))));
        Assert.Empty(Found(Hours.With(12, 14, r => Bright(r, 10, double.NaN, 0.78))));
        Assert.Equal(["rain_spike rain"], Found(Hours.With(12, 14, r => Bright(r, 10, 59.9, 0.8) with { SolarRadiationMJPerM2 = double.NaN })));
        Assert.Empty(Found(Hours.With(12, 14, r => Bright(r, 10, 60.1, 0.8) with { SolarRadiationMJPerM2 = double.NaN })));
        Assert.Empty(Found(Hours.With(12, 14, r => Bright(r, 10, double.NaN, double.NaN))));
    }

    [Fact]
    public void The_rest_of_the_rain_is_told_as_a_part()
    {
        var day = Hours.Of([.. Hours.Healthy.Select(r => r.Begin == Hours.At(12) ? Bright(r, 14, 50, 0.9) : r.Begin == Hours.At(13) ? Bright(r, 0, 50, 0.9) : r.Begin == Hours.At(20) ? r with { RainMm = 3 } : r)]);
        Assert.Null(day.RainAt("yard").RainMm);
        Assert.Equal(3, day.RainAt("yard").MeasuredPartMm);
    }

    [Fact]
    public void Overruled_it_counts()
    {
        var day = (Hours with { Accept = ["rain_spike"] }).With(12, 14, r => Bright(r, 10, 50, 0.9));
        Assert.Empty(Found(day));
        Assert.Equal(10, day.RainAt("yard").RainMm);
    }

    [Fact]
    public void A_logbook_entry_that_covers_the_interval_makes_the_day_known_and_one_beside_it_does_not()
    {
        WeatherDay With(params LogEntry[] log) => Hours.Scene.Days(Hours.Date, Hours.Date, log, ("yard", Broken()))[0];
        Assert.Null(With().RainAt("yard").RainMm);
        Assert.Equal(0, With(WeatherScene.Rain("yard", Hours.Date, null, 0)).RainAt("yard").RainMm);
        Assert.Equal(2, With(WeatherScene.Rain("yard", Hours.Date, "11:00", 0), WeatherScene.Rain("yard", Hours.Date, "13:00", 2)).RainAt("yard").RainMm);
        Assert.Null(With(WeatherScene.Rain("yard", Hours.Date, "00:00", 0), WeatherScene.Rain("yard", Hours.Date, "11:00", 0)).RainAt("yard").RainMm);
    }

    [Fact]
    public void Since_midnight_it_is_not_known_to_be_dry()
    {
        var readings = new Dictionary<string, IReadOnlyList<Reading>>(StringComparer.Ordinal) { ["yard"] = Broken() };
        GaugeDay At(double hour) => WeatherDays.RainSinceMidnight(Hours.Scene.Site, Hours.Date, Hours.At(hour), readings, [])[0];
        Assert.Equal(0, At(12).RainMm);
        Assert.Null(At(15).RainMm);
    }

    private static IReadOnlyList<Reading> Broken() =>
        [.. Hours.Healthy.Select(r => r.Begin == Hours.At(12) ? Bright(r, 14, 50, 0.9) : r.Begin == Hours.At(13) ? Bright(r, 0, 50, 0.9) : r)];

    /// <summary>The rain falls from 12 to 13 h.</summary>
    private static Reading Bright(Reading r, double mm, double humidity, double clearness)
    {
        var ra = Sun.ExtraterrestrialRadiationMJPerM2(r.Begin, r.End, Hours.LatitudeDeg, Hours.Scene.LongitudeDeg, Hours.Date.DayOfYear);
        return r with
        {
            RainMm = r.Begin == Hours.At(12) ? mm : 0,
            RelativeHumidityPercent = humidity,
            SolarRadiationMJPerM2 = clearness * Radiation.ClearSkyMJPerM2(ra, Hours.Scene.ElevationM),
        };
    }

    private static IEnumerable<string> Found(WeatherDay day) => day.SetAside.Select(s => $"{s.Check} {s.Quantity}");
}
