using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Files.Readings;

/// <summary>Forms in which loggers write: blanks between cells, units below the header, seconds since 1970, runs of wind, running totals of rain.</summary>
public sealed class StationFormsTests
{
    private static readonly DateTimeOffset Hour = new(2026, 6, 10, 15, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Runs_of_blanks_and_tabs_are_one_delimiter()
    {
        var source = StationFile.Plain with { Delimiter = ' ', Time = StationFile.Plain.Time with { Column = "Date", TimeOfDayColumn = "Clock" }, Columns = Bare("°C", "m/s", "mm") };
        var result = StationFile.Read("  Date        Clock   Temp  Wind   Rain\n2026-06-10  10:00    21.5\t 2.0    0.25  \n2026-06-10 11:00 22 -- 0\n", source with { Missing = ["--"] });

        Assert.Equal((2, 0, 0), result.Counts);
        Assert.Equal((21.5, 2, 0.25), (result.Readings[0].AirTemperatureC, result.Readings[0].WindSpeedMPerS, result.Readings[0].RainMm));
        Assert.True(double.IsNaN(result.Readings[1].WindSpeedMPerS));
    }

    [Fact]
    public void Any_sign_may_be_the_delimiter()
    {
        var result = StationFile.Read(StationFile.PlainHeader.Replace(',', '~') + "2026-06-10 10:00~21~2~0\n", StationFile.Plain with { Delimiter = '~' });
        Assert.Equal(21, Assert.Single(result.Readings).AirTemperatureC);
    }

    [Fact]
    public void Units_may_stand_in_the_line_below_the_header()
    {
        var source = StationFile.Plain with { UnitsBelow = true, Columns = Bare(null, null, null) };
        var result = StationFile.Read("station 7\nTime,Temp,Wind,Rain\n,[°F],(mph),in\n2026-06-10 10:00,50,10,1\nTime,Temp,Wind,Rain\n,°C,m/s,mm\n2026-06-10 11:00,10,3,2\n", source);

        Assert.Equal((2, 0, 0), result.Counts);
        Assert.Equal((10, 4.4704, 25.4), Rounded(result.Readings[0]));
        Assert.Equal((10, 3, 2), Rounded(result.Readings[1]));
    }

    [Fact]
    public void A_line_of_units_that_lacks_one_refuses_the_file_at_its_column()
    {
        var result = StationFile.Read("Time,Temp,Wind,Rain\n,°F,,in\n2026-06-10 10:00,50,10,1\n", StationFile.Plain with { UnitsBelow = true, Columns = Bare(null, null, null) });

        Assert.True(result.Report.FileRefused);
        var problem = Assert.Single(result.Report.Problems);
        Assert.Equal((1, 3), (problem.Line, problem.Column));
        Assert.Contains("does not say its unit", problem.What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1781103600", true)]
    [InlineData("1781103600.0", true)]
    [InlineData("1781103600.5", false)]
    [InlineData("1781103600000", false)]
    [InlineData("2026-06-10 10:00", false)]
    [InlineData("-1", false)]
    [InlineData("", false)]
    public void Seconds_since_1970_are_UTC_whatever_the_map_says(string stamp, bool read)
    {
        var source = StationFile.Plain with { Time = new TimeColumn("Time", null, "epoch", StampClock.Local, StampMeaning.End) };
        var result = StationFile.Read(StationFile.PlainHeader + stamp + ",21,2,0\n", source);

        Assert.Equal(read ? (1, 0, 0) : (0, 0, 1), result.Counts);
        if (read)
        {
            Assert.Equal(Hour, Assert.Single(result.Readings).End);
        }
    }

    [Theory]
    [InlineData("12:00 AM", 0)]
    [InlineData("12:30 am", 0.5)]
    [InlineData("12:00 PM", 12)]
    [InlineData("1:05 pm", 13 + (1 / 12.0))]
    public void Halves_of_the_day_are_read(string clock, double hour)
    {
        var source = StationFile.Plain with { Time = new TimeColumn("Time", null, "M/d/yyyy h:mm tt", StampClock.Standard, StampMeaning.Start) };
        var result = StationFile.Read(StationFile.PlainHeader + "6/10/2026 " + clock + ",21,2,0\n", source);
        Assert.Equal(new DateTimeOffset(2026, 6, 10, 6, 0, 0, TimeSpan.Zero).AddHours(hour), Assert.Single(result.Readings).Begin);
    }

    [Theory]
    [InlineData("mi", 9, 9 * 0.44704)]
    [InlineData("km", 18, 5)]
    [InlineData("m", 7200, 2)]
    [InlineData("km/h", 18, 5)]
    public void A_run_of_wind_is_its_mean_speed(string unit, double value, double metrePerSecond)
    {
        var text = FormattableString.Invariant($"Time,Temp (°C),Run,Rain (mm)\n2026-06-10 10:00,21,{value},0\n");
        var columns = new Dictionary<WeatherQuantity, MappedColumn>(StationFile.Plain.Columns) { [WeatherQuantity.WindSpeed] = new("Run", unit) };
        Assert.Equal(metrePerSecond, Assert.Single(StationFile.Read(text, StationFile.Plain with { Columns = columns }).Readings).WindSpeedMPerS, 1e-12);
    }

    [Fact]
    public void A_running_total_is_kept_as_such()
    {
        var columns = new Dictionary<WeatherQuantity, MappedColumn>(StationFile.Plain.Columns) { [WeatherQuantity.Rain] = new("Rain (mm)", null, Counter: true) };
        var reading = Assert.Single(StationFile.Read(StationFile.PlainHeader + "2026-06-10 10:00,21,2,131.5\n", StationFile.Plain with { Columns = columns }).Readings);
        Assert.Equal(131.5, reading.RainCounterMm);
        Assert.True(double.IsNaN(reading.RainMm));
    }

    private static (double, double, double) Rounded(Reading r) => (Math.Round(r.AirTemperatureC, 9), Math.Round(r.WindSpeedMPerS, 9), Math.Round(r.RainMm, 9));

    private static Dictionary<WeatherQuantity, MappedColumn> Bare(string? temperature, string? wind, string? rain) => new()
    {
        [WeatherQuantity.AirTemperature] = new("Temp", temperature),
        [WeatherQuantity.WindSpeed] = new("Wind", wind),
        [WeatherQuantity.Rain] = new("Rain", rain),
    };
}
