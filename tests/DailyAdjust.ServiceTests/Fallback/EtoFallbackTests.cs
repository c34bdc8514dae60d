using Xunit;

namespace DailyAdjust.ServiceTests.Fallback;

/// <summary>What stands in for weather that a station did not measure, in its order, through the real program: the number and the words.</summary>
public sealed class EtoFallbackTests : IDisposable
{
    private const string Date = "2026-06-10";
    private const double LatitudeDeg = 44.21;
    private const double ElevationM = 1290 * 0.3048;
    private const int DayOfYear = 161;

    /// <summary>Half of the last digit that `weather` prints, and of the sums of the test itself.</summary>
    private const double Mm = 0.0002;

    private readonly FallbackHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void A_gap_of_three_hours_is_read_off_the_straight_line_and_named()
    {
        // From 70.0 to 74.0 °F in four steps: the line meets 71, 72 and 73.
        HourlyFile Framed() => new HourlyFile().Set("2026-06-10 10:00", HourlyFile.Temperature, "70.0").Set("2026-06-10 14:00", HourlyFile.Temperature, "74.0");
        using var whole = new FallbackHome();
        whole.Drop("yard-1.csv", Framed().Set("2026-06-10 11:00", HourlyFile.Temperature, "71.0").Set("2026-06-10 12:00", HourlyFile.Temperature, "72.0").Set("2026-06-10 13:00", HourlyFile.Temperature, "73.0").Text);
        var sheetOfWhole = whole.Morning("2026-06-11");
        _home.Drop("yard-1.csv", Framed().Empty(Date, 10, 13, HourlyFile.Temperature).Text);
        var sheet = _home.Morning("2026-06-11");

        Assert.Equal(("hourly", ""), (whole.Day(Date).Basis, whole.Day(Date).Estimated));
        Assert.Equal(("hourly", "air_temperature: 3 h interpolated"), (_home.Day(Date).Basis, _home.Day(Date).Estimated));
        Assert.Equal(whole.Day(Date).EtoMm, _home.Day(Date).EtoMm, Mm);
        Assert.Contains("Wed 10 June: air temperature: 3 h interpolated.", sheet.Assumed);
        Assert.Contains("Wed 10 June: air temperature: 3 h interpolated.", sheet.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("interpolated", sheetOfWhole.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_gap_of_four_hours_is_not_interpolated()
    {
        var file = new HourlyFile();
        var expected = Expected(file, wind: 2);
        _home.Drop("yard-1.csv", file.Empty(Date, 10, 14, HourlyFile.Wind).Text);
        _home.Morning("2026-06-11");
        Assert.Equal("wind_speed: taken as 2 m/s", _home.Day(Date).Estimated);
        Assert.Equal(expected, _home.Day(Date).EtoMm, Mm);
    }

    /// <summary>The next one in the site's order that knows the whole day, not the nearest.</summary>
    [Theory]
    [InlineData(true, "barn", "taken from station barn (6.9 mi away, 250 ft higher)")]
    [InlineData(false, "mill", "taken from station mill (0.7 mi away, 40 ft lower)")]
    public void The_next_station_in_order_stands_in_with_its_distance_and_height(bool barnKnows, string station, string words)
    {
        // On one meridian a degree is 2 π 6371 km / 360 = 111.19 km: 0.1° is 6.91 mi, 0.01° 0.69 mi.
        _home.WithStations(_home.StationLike("yard")
            + _home.StationLike("barn", "      latitude: 44.31\n      longitude: -98.32\n      elevation: 1540 ft\n")
            + _home.StationLike("mill", "      latitude: 44.2\n      longitude: -98.32\n      elevation: 1250 ft\n"));
        var warmer = new HourlyFile();
        foreach (var hour in Enumerable.Range(1, 23))
        {
            warmer.Set($"{Date} {hour:00}:00", HourlyFile.Wind, "4.0").Set($"{Date} {hour:00}:00", HourlyFile.Solar, hour is > 6 and < 20 ? "300" : "0");
        }

        // The wind of the barn varies, or it would be set aside as stuck.
        warmer.Set($"{Date} 08:00", HourlyFile.Wind, "5.0").Set($"{Date} 15:00", HourlyFile.Wind, "5.5");
        _home.Drop("yard-1.csv", new HourlyFile().Without(Date).Text);
        _home.Drop("barn-1.csv", (barnKnows ? new HourlyFile() : new HourlyFile().Empty(Date, 6, 18, HourlyFile.Temperature)).Text);
        _home.Drop("mill-1.csv", (barnKnows ? warmer : new HourlyFile()).Text);
        var sheet = _home.Morning("2026-06-11");

        // What an independent program expects of the file that was taken.
        var expected = CsvRows.Of(File.ReadAllText(Path.Combine(ExampleSite.Folder, "expected-weather.csv")));
        var day = _home.Day(Date);
        Assert.Equal((station, "other-station"), (day.Station, day.Basis));
        Assert.Equal(expected.Number(expected.Rows.Single(row => string.Equals(row[0], Date, StringComparison.Ordinal)), "eto_mm")!.Value, day.EtoMm, 0.02);
        Assert.Contains($"Wed 10 June: {words}.", sheet.Assumed);
        Assert.Contains($"Wed 10 June: {words}.", sheet.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_radiation_it_is_taken_from_the_range_of_temperature()
    {
        var file = new HourlyFile();
        var (max, min) = Extremes(file, HourlyFile.Temperature);
        var ra = PaperEquations.RaMJPerM2(LatitudeDeg, DayOfYear);
        AssertEstimated(
            file.Empty(Date, 0, 24, HourlyFile.Solar), Expected(new HourlyFile(), solar: PaperEquations.RsFromRangeMJPerM2(max, min, ra, ElevationM)), "solar_radiation: from the range of temperature");
    }

    [Fact]
    public void Without_wind_it_is_taken_as_two_metres_a_second()
    {
        // Source: [FAO56] p. 63.
        AssertEstimated(new HourlyFile().Empty(Date, 0, 24, HourlyFile.Wind), Expected(new HourlyFile(), wind: 2), "wind_speed: taken as 2 m/s");
    }

    [Fact]
    public void Without_humidity_the_dew_point_is_the_lowest_temperature()
    {
        // Source: [FAO56] eq. 48, p. 58.
        var (_, min) = Extremes(new HourlyFile(), HourlyFile.Temperature);
        AssertEstimated(
            new HourlyFile().Empty(Date, 0, 24, HourlyFile.Humidity), Expected(new HourlyFile(), vapour: PaperEquations.SaturationKPa(min)), "relative_humidity: dew point taken as the lowest temperature");
    }

    [Fact]
    public void With_temperatures_alone_it_comes_of_them()
    {
        var (max, min) = Extremes(new HourlyFile(), HourlyFile.Temperature);
        _home.Drop("yard-1.csv", new HourlyFile().Empty(Date, 0, 24, HourlyFile.Humidity, HourlyFile.Wind, HourlyFile.Solar).Text);
        var sheet = _home.Morning("2026-06-11");

        var day = _home.Day(Date);
        Assert.Equal(("yard", "temperature-only"), (day.Station, day.Basis));
        Assert.Equal(PaperEquations.FromTemperaturesMm(max, min, PaperEquations.RaMJPerM2(LatitudeDeg, DayOfYear)), day.EtoMm, Mm);
        const string Words = "Wed 10 June: only temperatures were measured (station yard): reference ET: from temperatures alone (Hargreaves-Samani).";
        Assert.Contains(Words, sheet.Assumed);
        Assert.Contains(Words, sheet.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_day_of_which_nothing_is_there_has_the_mean_of_the_seven_known_days_before()
    {
        // The 8th is not known either: it is no known day for the mean of the 10th.
        _home.Drop("yard-1.csv", new HourlyFile().Without("2026-06-08").Without(Date).Text);
        var sheet = _home.Morning("2026-06-11");

        string[] known = ["2026-06-02", "2026-06-03", "2026-06-04", "2026-06-05", "2026-06-06", "2026-06-07", "2026-06-09"];
        var day = _home.Day(Date);
        Assert.Equal(("", "expected"), (day.Station, day.Basis));
        Assert.All(known, date => Assert.Equal("hourly", _home.Day(date).Basis));
        Assert.Equal(known.Average(date => _home.Day(date).EtoMm), day.EtoMm, Mm);
        Assert.Contains("Wed 10 June: no station reported a whole day: reference ET: the mean of the last 7 known days.", sheet.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Before_the_first_known_day_the_months_normal_stands_in_and_is_called_so()
    {
        _home.With(("  gauges:\n", "  normals:\n    eto: { unit: mm/day, values: [0.8, 1.2, 2.2, 3.3, 4.2, 5.2, 5.2, 4.5, 3.3, 2.1, 1.2, 0.7] }\n  gauges:\n"));
        _home.Drop("yard-1.csv", new HourlyFile("2026-06-03 05:00").Without("2026-06-01").Text);
        var sheet = _home.Morning("2026-06-03");

        var day = _home.Day("2026-06-01");
        Assert.Equal(("", "expected"), (day.Station, day.Basis));
        Assert.Equal(5.2, day.EtoMm, Mm);
        Assert.Contains("Mon 1 June: no station reported a whole day: reference ET: the month's normal.", sheet.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void With_no_known_day_and_no_normals_the_day_stays_open_and_every_dial_as_it_is()
    {
        _home.Drop("yard-1.csv", new HourlyFile("2026-06-03 05:00").Without("2026-06-01").Text);
        var sheet = _home.Morning("2026-06-03");
        Assert.Contains("Mon 1 June: not known.", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("No sound advice today", sheet.Text, StringComparison.OrdinalIgnoreCase);
        Assert.Equal("as-set", sheet.Program("C1", "P2").GetProperty("advice").GetString());
    }

    private static (double Max, double Min) Extremes(HourlyFile file, int column)
    {
        var values = file.OfDay(Date, column).Select(v => column == HourlyFile.Temperature ? (v - 32) / 1.8 : v).ToList();
        return (values.Max(), values.Min());
    }

    /// <summary>The daily equation on the file's numbers, some of them replaced.</summary>
    private static double Expected(HourlyFile file, double? wind = null, double? vapour = null, double? solar = null)
    {
        var (max, min) = Extremes(file, HourlyFile.Temperature);
        var (wet, dry) = Extremes(file, HourlyFile.Humidity);
        return PaperEquations.EtoMm(
            max,
            min,
            vapour ?? PaperEquations.VapourKPa(max, min, wet, dry),
            wind ?? file.OfDay(Date, HourlyFile.Wind).Average() * 0.44704,
            solar ?? file.OfDay(Date, HourlyFile.Solar).Sum() * 0.0036,
            PaperEquations.RaMJPerM2(LatitudeDeg, DayOfYear),
            ElevationM);
    }

    private void AssertEstimated(HourlyFile file, double expectedMm, string note)
    {
        _home.Drop("yard-1.csv", file.Text);
        var sheet = _home.Morning("2026-06-11");
        var day = _home.Day(Date);
        Assert.Equal(("yard", "part-estimated", note), (day.Station, day.Basis, day.Estimated));
        Assert.Equal(expectedMm, day.EtoMm, Mm);
        var words = $"Wed 10 June: part of it estimated (station yard): {note.Replace('_', ' ').Replace("2 m/s", "4 mph", StringComparison.Ordinal)}.";
        Assert.Contains(words, sheet.Assumed);
        Assert.Contains(words, sheet.Text, StringComparison.Ordinal);
    }
}
