using DailyAdjust.ServiceTests.Explain;
using Xunit;

namespace DailyAdjust.ServiceTests.Fallback;

/// <summary>The worked examples of [FAO56] in which something is missing, as files of a daily station through the real program.</summary>
public sealed class PublishedFallbackTests : IDisposable
{
    private readonly FallbackHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Radiation_from_sunshine_at_Uccle()
    {
        // Source: [FAO56] ex. 18, p. 72-73: 6 July, 50°48' N, 100 m; ETo 3.88.
        var day = Morning("50.8", "100 m", "2026-07-06", "21.5,12.3,84,63,10,9.25", out var sheet);
        Assert.Equal(("part-estimated", "solar_radiation: from sunshine"), (day.Basis, day.Estimated));
        Assert.Equal(3.88, day.EtoMm, 0.005);
        Assert.Contains("Mon 6 July: part of it estimated (station yard): solar radiation: from sunshine.", sheet.Text, StringComparison.Ordinal);

        // The test's own copy of the equations, held against the same example.
        var rs = (0.25 + (0.50 * 9.25 / 16.1)) * PaperEquations.RaMJPerM2(50.8, 187);
        Assert.Equal(3.88, PaperEquations.EtoMm(21.5, 12.3, PaperEquations.VapourKPa(21.5, 12.3, 84, 63), 2.078, rs, PaperEquations.RaMJPerM2(50.8, 187), 100), 0.005);
    }

    [Fact]
    public void Radiation_and_humidity_from_temperatures_at_Lyon()
    {
        // Source: [FAO56] ex. 20, p. 77-78: July (day 196), 45°43' N, 200 m, wind 2 m/s at 2 m; ETo 4.56. 2.674 m/s at 10 m is 2 m/s at 2 m (eq. 47).
        var day = Morning("45.72", "200 m", "2026-07-15", "26.6,14.8,,,9.627,", out var sheet);
        Assert.Equal("part-estimated", day.Basis);
        Assert.Equal(4.56, day.EtoMm, 0.005);
        Assert.Contains("relative humidity: dew point taken as the lowest temperature; solar radiation: from the range of temperature.", sheet.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Temperatures_alone_at_Lyon()
    {
        // Source: [FAO56] eq. 52, p. 64, and ex. 20, p. 78: 5.0.
        var day = Morning("45.72", "200 m", "2026-07-15", "26.6,14.8,,,,", out var sheet);
        Assert.Equal("temperature-only", day.Basis);
        Assert.Equal(5.0, day.EtoMm, 0.05);
        Assert.Contains("Wed 15 July: only temperatures were measured (station yard)", sheet.Text, StringComparison.Ordinal);
    }

    private FallbackDay Morning(string latitude, string elevation, string date, string row, out FallbackSheet sheet)
    {
        var day = DateOnly.ParseExact(date, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        _home.WithStations("""
                - id: yard
                  files: "yard-*.csv"
                  format: csv
                  interval: 1 d
                  time: { column: Date, pattern: "yyyy-MM-dd", clock: local, stamp: start }
                  wind_height: 10 m
                  columns:
                    air_temperature_max: "Tmax (°C)"
                    air_temperature_min: "Tmin (°C)"
                    relative_humidity_max: "RHmax (%)"
                    relative_humidity_min: "RHmin (%)"
                    wind_speed: "Wind (km/h)"
                    sunshine: "Sunshine (h)"
                    rain: "Rain (mm)"

            """)
            .With(
                ("latitude: 44.21", "latitude: " + latitude),
                ("longitude: -98.32", "longitude: 4.35"),
                ("elevation: 1290 ft", "elevation: " + elevation),
                ("America/Chicago", "Europe/Brussels"),
                ("units: us", "units: metric"),
                ("start: 2026-06-01", "start: " + date));
        _home.Drop("yard-1.csv", $"Date,Tmax (°C),Tmin (°C),RHmax (%),RHmin (%),Wind (km/h),Sunshine (h),Rain (mm)\n{date},{row},0.0\n");
        sheet = _home.Morning(day.AddDays(1).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));
        var explained = Explained.Of(_home.Run("explain", "C1/1", "--date", date));
        Assert.True(explained.Lines > 15, $"{explained.Lines} equations");
        Assert.Equal(_home.Day(date).EtoMm, explained.Last("ETo"), 0.0001);
        return _home.Day(date);
    }
}
