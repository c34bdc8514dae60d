using System.Globalization;
using System.Text;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files;
using DailyAdjust.Files.Guess;
using DailyAdjust.Files.Sites;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Files.Guess;

/// <summary>Small invented files, each with something that a quick look gets wrong.</summary>
public sealed class GuessTrapTests
{
    [Fact]
    public void A_plain_file_is_read_and_what_it_does_not_say_is_marked()
    {
        var file = GuessedFile.Read("""
            Time,Temp (°F),RH (%),Wind (mph),Gust (mph),Solar (W/m²),Rain (in),Battery (V)
            2026-06-01 13:00,77.0,52,6.0,11.0,850,0.00,12.6
            2026-06-01 14:00,78.0,50,6.5,12.0,800,0.00,12.6
            2026-06-01 15:00,78.5,49,6.5,12.5,700,0.01,12.6
            2026-06-01 16:00,--,49,6.5,12.5,500,0.00,12.6
            2026-06-01 17:00,--,49,6.5,12.5,300,0.03,12.6
            2026-06-01 18:00,75.5,49,6.5,12.5,100,0.00,12.6

            """);
        Assert.Equal(6, file.Report.RowsRead);
        Assert.Equal(25, file.Readings[0].AirTemperatureC, 1e-9);
        Assert.Equal(6 * 0.44704, file.Readings[0].WindSpeedMPerS, 1e-9);
        Assert.Equal(["--"], file.Source.Missing);
        Assert.Equal("yard-*.csv", file.Source.Files);
        Assert.Equal([("Gust (mph)", "a gust, not the mean wind"), ("Battery (V)", "of the logger itself")], file.Guess.Left.Select(l => (l.Header, l.Why)));
        Assert.True(file.IsSure("interval") && file.IsSure("time.pattern") && file.IsSure("columns.air_temperature"));
        Assert.False(file.IsSure("time.clock"));
        Assert.False(file.IsSure("time.stamp"));
        Assert.False(file.IsSure("wind_height"));
        var yaml = GuessYaml.Weather(file.Guess);
        Assert.Contains("clock: local   # check: nothing in the file says it", yaml, StringComparison.Ordinal);
        Assert.Contains("wind_height: 2 m   # check: ", yaml, StringComparison.Ordinal);
        Assert.DoesNotContain("interval: 1 h   # check", yaml, StringComparison.Ordinal);
    }

    [Fact]
    public void A_number_above_12_in_any_row_tells_day_from_month()
    {
        var early = GuessedFile.Read("Date Time,Temp C\n" + string.Join('\n', Hours(new(2026, 6, 5), 20).Select(t => t.ToString("dd/MM/yyyy HH:mm", CultureInfo.InvariantCulture) + ",20.0")) + "\n", monthFirst: true);
        Assert.Equal("MM/dd/yyyy HH:mm", early.Source.Time.Pattern);
        Assert.Equal("dd/MM/yyyy HH:mm", early.Guess.OtherPattern);
        Assert.False(early.IsSure("time.pattern"));
        Assert.Contains("dd/MM/yyyy HH:mm", early.Finding("time.pattern").Why, StringComparison.Ordinal);

        var late = GuessedFile.Read("Date Time,Temp C\n" + string.Join('\n', Hours(new(2026, 6, 5), 24 * 9).Select(t => t.ToString("dd/MM/yyyy HH:mm", CultureInfo.InvariantCulture) + ",20.0")) + "\n", monthFirst: true);
        Assert.Equal("dd/MM/yyyy HH:mm", late.Source.Time.Pattern);
        Assert.True(late.IsSure("time.pattern"));
    }

    [Fact]
    public void Where_no_number_is_above_12_the_dates_may_still_follow_one_another_in_one_order_only()
    {
        var text = "Date Time;Temp (°C)\n" + string.Concat(Hours(new(2026, 6, 1), 24 * 8).Select(t => t.ToString("d/M/yyyy H:mm", CultureInfo.InvariantCulture) + ";20,5\n"));
        var file = GuessedFile.Read(text, monthFirst: true);
        Assert.Equal("d/M/yyyy H:mm", file.Source.Time.Pattern);
        Assert.True(file.IsSure("time.pattern"));
        Assert.Contains("jump", file.Finding("time.pattern").Why, StringComparison.Ordinal);
        Assert.True(file.Source.DecimalComma);
        Assert.Equal(8 * 24, file.Report.RowsRead);
    }

    [Fact]
    public void Units_below_decimal_comma_and_german_words()
    {
        var file = GuessedFile.Read("""
            Wetterstation am Platz
            Stand 3
            Datum;Uhrzeit;Lufttemperatur;Luftfeuchtigkeit;Windrichtung;Windgeschwindigkeit;Böe;Globalstrahlung;Niederschlag;Bodenfeuchte
            TT.MM.JJ;hh:mm;°C;%;°;km/h;km/h;W/m²;mm;%
            01.06.26;11:00;25,0;52;270;9,0;15,0;850;0,0;31
            01.06.26;11:10;25,2;51;271;9,4;15,0;855;0,2;31
            01.06.26;11:20;-999,9;51;271;9,4;15,0;856;0,0;31
            13.06.26;11:30;25,3;51;271;9,4;15,0;857;0,4;31
            13.06.26;11:40;25,4;51;271;9,4;15,0;858;0,1;31

            """);
        Assert.Equal((';', true, true, "Datum", "Uhrzeit", "dd.MM.yy HH:mm"), (file.Source.Delimiter, file.Source.DecimalComma, file.Source.UnitsBelow, file.Source.Time.Column, file.Source.Time.TimeOfDayColumn, file.Source.Time.Pattern));
        Assert.Equal(TimeSpan.FromMinutes(10), file.Source.Interval);
        Assert.Equal(["-999,9"], file.Source.Missing);
        Assert.Equal(5, file.Source.Columns.Count);
        Assert.Equal(2.5, file.Readings[0].WindSpeedMPerS, 1e-9);
        Assert.Equal(double.NaN, file.Readings[2].AirTemperatureC);
        Assert.Equal((5, 0, 0), (file.Report.RowsRead, file.Report.RowsSetAside, file.Report.RowsRefused));
    }

    [Fact]
    public void Spanish_and_French_words_and_the_moisture_of_the_soil_is_not_the_air_s()
    {
        var file = GuessedFile.Read("""
            Fecha,Temperatura (°C),Humedad (%),Humedad del suelo (%),Viento (m/s),Dirección del viento (°),Radiación (W/m2),Lluvia (mm)
            2026-06-01 13:00,25.0,52,22,2.0,180,850,0.0
            2026-06-01 14:00,25.0,52,22,2.0,180,850,0.2
            2026-06-01 15:00,25.0,52,22,2.0,180,850,0.0
            2026-06-01 16:00,25.0,52,22,2.0,180,850,0.3

            """);
        Assert.Equal(["Temperatura (°C)", "Humedad (%)", "Viento (m/s)", "Radiación (W/m2)", "Lluvia (mm)"], file.Source.Columns.OrderBy(c => c.Key).Select(c => c.Value.Header));
        var french = GuessedFile.Read("""
            Heure;Température du sol (°C);Température (°C);Humidité (%);Vent moyen (km/h);Rafale (km/h);Rayonnement (W/m²);Pluie (mm)
            2026-06-01 13:00;18;25,0;52;2,0;11;850;0,0
            2026-06-01 14:00;18;25,0;52;2,0;11;850;0,2
            2026-06-01 15:00;18;25,0;52;2,0;11;850;0,0

            """);
        Assert.Equal(["Température (°C)", "Humidité (%)", "Vent moyen (km/h)", "Rayonnement (W/m²)", "Pluie (mm)"], french.Source.Columns.OrderBy(c => c.Key).Select(c => c.Value.Header));
    }

    [Fact]
    public void Units_after_the_name_and_rain_in_that_is_not_indoors()
    {
        var file = GuessedFile.Read("""
            dateutc,tempf,tempinf,humidity,humidityin,windspeedmph,windgustmph,solarradiation,dailyrainin
            2026-06-01 13:00:00,77.0,70,52,40,6.0,11.0,850,0.00
            2026-06-01 13:15:00,77.0,70,52,40,6.0,11.0,850,0.01
            2026-06-01 13:30:00,77.0,70,52,40,6.0,11.0,850,0.01
            2026-06-01 13:45:00,77.0,70,52,40,6.0,11.0,850,0.05
            2026-06-01 14:00:00,77.0,70,52,40,6.0,11.0,850,0.05
            2026-06-01 14:15:00,77.0,70,52,40,6.0,11.0,850,0.07
            2026-06-01 14:30:00,77.0,70,52,40,6.0,11.0,850,0.07

            """);
        Assert.Equal(new MappedColumn("tempf", "°F"), file.Source.Columns[WeatherQuantity.AirTemperature]);
        Assert.Equal(new MappedColumn("humidity", "%"), file.Source.Columns[WeatherQuantity.RelativeHumidity]);
        Assert.Equal(new MappedColumn("windspeedmph", "mph"), file.Source.Columns[WeatherQuantity.WindSpeed]);
        Assert.Equal(new MappedColumn("dailyrainin", "in", Counter: true), file.Source.Columns[WeatherQuantity.Rain]);
        Assert.False(file.IsSure("columns.solar_radiation"));
        Assert.Equal(StampClock.Utc, file.Source.Time.Clock);
        Assert.True(file.IsSure("time.clock"));
    }

    [Fact]
    public void Rain_in_after_the_name_is_inches_and_Temp_in_is_indoors()
    {
        var file = GuessedFile.Read("""
            Time	Temp In F	Temp Out F	Hum In %	RH %	Rain in
            6/1/2026 1:00 PM	70	77.0	40	52	0.00
            6/1/2026 1:05 PM	70	77.1	40	52	0.01
            6/1/2026 1:10 PM	70	77.1	40	52	0.00
            6/13/2026 1:15 PM	70	77.1	40	52	0.02
            6/13/2026 1:20 PM	70	77.1	40	52	0.00

            """);
        Assert.Equal("Temp Out F", file.Source.Columns[WeatherQuantity.AirTemperature].Header);
        Assert.Equal("RH %", file.Source.Columns[WeatherQuantity.RelativeHumidity].Header);
        Assert.Equal(new MappedColumn("Rain in", "in"), file.Source.Columns[WeatherQuantity.Rain]);
        Assert.Equal("M/d/yyyy h:mm tt", file.Source.Time.Pattern);
        Assert.Equal('\t', file.Source.Delimiter);
        Assert.Equal(0.254, file.Readings[1].RainMm, 1e-9);
    }

    [Fact]
    public void Blanks_part_the_cells_and_seconds_count_from_1970()
    {
        var rows = Enumerable.Range(0, 12).Select(i => FormattableString.Invariant($"  {1780308000 + (600 * i)}   {20 + (0.1 * i):0.0}     55  2.1"));
        var file = GuessedFile.Read("epoch   Temp(C)  RH(%)  Wind(m/s)\n" + string.Join('\n', rows) + "\n");
        Assert.Equal((' ', "epoch", StampClock.Utc), (file.Source.Delimiter, file.Source.Time.Pattern, file.Source.Time.Clock));
        Assert.True(file.IsSure("time.clock"));
        Assert.Equal(TimeSpan.FromMinutes(10), file.Source.Interval);
        Assert.Equal(12, file.Report.RowsRead);
        Assert.Equal(DateTimeOffset.FromUnixTimeSeconds(1780308000), file.Readings[0].End);
    }

    [Fact]
    public void A_mark_that_another_column_can_really_be_is_not_proposed()
    {
        var file = GuessedFile.Read("""
            Time|Temp (°C)|RH (%)|Solar (W/m²)
            2026-06-01T13:00:00-05:00|25.0|999|999
            2026-06-01T14:00:00-05:00|25.0|999|850
            2026-06-01T15:00:00-05:00|25.0|50|700
            2026-06-01T16:00:00-05:00|25.0|48|500

            """);
        Assert.Empty(file.Source.Missing);
        Assert.False(file.IsSure("missing"));
        Assert.Contains("999 in \"RH (%)\"", file.Finding("missing").Why, StringComparison.Ordinal);
        Assert.Equal("yyyy-MM-ddTHH:mm:sszzz", file.Source.Time.Pattern);
        Assert.True(file.IsSure("time.clock"));
        Assert.Equal(0.999 * 3.6, file.Readings[0].SolarRadiationMJPerM2, 1e-9);
    }

    [Fact]
    public void A_clock_in_hours_from_Greenwich_is_not_UTC()
    {
        const string Rows = "2026-06-01 13:00,25.0\n2026-06-01 13:30,25.0\n2026-06-01 14:00,25.0\n2026-06-01 14:30,26.0\n";
        var file = GuessedFile.Read("\"Date Time, GMT-06:00\",Temp (°C)\n" + Rows, GuessedFile.Place);
        Assert.Equal(StampClock.Standard, file.Source.Time.Clock);
        Assert.True(file.IsSure("time.clock"));
        var other = GuessedFile.Read("\"Date Time, GMT-05:00\",Temp (°C)\n" + Rows, GuessedFile.Place);
        Assert.False(other.IsSure("time.clock"));
        var utc = GuessedFile.Read("Time zone: UTC\nDate Time,Temp (°C)\n" + Rows, GuessedFile.Place);
        Assert.Equal(StampClock.Utc, utc.Source.Time.Clock);
    }

    [Fact]
    public void A_logger_s_four_lines_and_units_that_stand_nowhere()
    {
        var file = GuessedFile.Read("""
            "Tower","T1","firmware 3"
            "TIMESTAMP","RECORD","AirTC_Avg","RH","WS_ms_Avg","WS_Max","SlrW_Avg","Rain_mm_Tot"
            "TS","RN","Deg C","%","meters/second","meters/second","W/m^2","mm"
            "","","Avg","Smp","Avg","Max","Avg","Tot"
            "2026-06-01 13:00:00",1,25.0,50,2.1,5,850,0
            "2026-06-01 14:00:00",2,25.0,50,2.2,5,800,0.2
            "2026-06-01 15:00:00",3,25.0,50,2.3,5,700,0

            """);
        Assert.Equal((3, 0, 1), (file.Report.RowsRead, file.Report.RowsSetAside, file.Report.RowsRefused));
        Assert.Equal(new MappedColumn("WS_ms_Avg", "m/s"), file.Source.Columns[WeatherQuantity.WindSpeed]);
        Assert.True(file.IsSure("columns.wind_speed"));

        var bare = GuessedFile.Only("Time,Temp,Wind,Rain\n2026-06-01 13:00,78.0,5,0\n2026-06-01 14:00,79,5,0.01\n2026-06-01 15:00,79,5,0\n2026-06-01 16:00,79,5,0\n");
        Assert.Equal(["°F", "mph", "in"], bare.Source!.Columns.OrderBy(c => c.Key).Select(c => c.Value.Unit));
        Assert.DoesNotContain(bare.Findings, finding => finding.IsSure && finding.Key.StartsWith("columns.", StringComparison.Ordinal));
    }

    [Fact]
    public void A_public_format_is_known_by_its_own_signs_and_a_forecast_is_no_station()
    {
        var guess = GuessedFile.Only("""
            {
                "properties": {
                    "validTimes": "2026-06-08T06:00:00+00:00/P7DT19H",
                    "gridId": "XYZ",
                    "temperature": { "uom": "wmoUnit:degC", "values": [ { "validTime": "2026-06-08T09:00:00+00:00/PT1H", "value": 14.5 } ] }
                }
            }
            """, name: "gridpoint-20260608.json");
        Assert.True(guess.IsForecast);
        Assert.Equal("gridpoint", guess.Source!.Format);
        var proposal = GuessYaml.Weather(guess);
        var site = ExampleSiteFiles.SiteYaml.Replace("weather:\n", proposal, StringComparison.Ordinal);
        var reading = SiteReader.Read("site.yaml", site, "stations.csv", ExampleSiteFiles.StationsCsv);
        Assert.DoesNotContain(reading.Problems, problem => problem.Severity == Severity.Error);
        Assert.Equal("gridpoint-*.json", reading.Site!.Weather.Forecast!.Files);
    }

    [Fact]
    public void A_comma_that_parts_cells_may_stand_in_quoted_numbers_too()
    {
        var file = GuessedFile.Read("""
            Time,Temp (°C),Rain (mm)
            2026-06-01 13:00,"25,0","0,0"
            2026-06-01 14:00,"25,3","0,2"
            2026-06-01 15:00,"25,3","0,0"
            2026-06-01 16:00,"25,3","0,4"

            """);
        Assert.True(file.Source.DecimalComma);
        Assert.Null(file.Source.Delimiter);
        Assert.Equal(25.3, file.Readings[1].AirTemperatureC, 1e-9);
    }

    [Fact]
    public void A_daily_table_with_extremes()
    {
        var file = GuessedFile.Read("""
            "Date","High Temp (F)","Low Temp (F)","Avg RH (%)","Wind Run (mi)","Solar (MJ/m2/day)","Precip (in)"
            "6/1/2026",77.0,59.0,55,88,24.5,0.00
            "6/2/2026",80.6,NA,57,90,26.0,0.31
            "6/3/2026",80.6,60,57,90,26.0,0.00
            "6/13/2026",80.6,60,57,90,26.0,0.12
            "6/14/2026",80.6,60,57,90,26.0,0.00
            "6/15/2026",80.6,60,57,90,26.0,0.00

            """);
        Assert.True(file.Source.IsDaily);
        Assert.Equal(["NA"], file.Source.Missing);
        Assert.Equal([WeatherQuantity.AirTemperatureMax, WeatherQuantity.AirTemperatureMin, WeatherQuantity.RelativeHumidity, WeatherQuantity.WindSpeed, WeatherQuantity.SolarRadiation, WeatherQuantity.Rain], file.Source.Columns.Keys.Order());
        Assert.True(file.IsSure("time.clock") && file.IsSure("time.stamp"));
        Assert.Equal(88 * 1609.344 / 86400, file.Readings[0].WindSpeedMPerS, 1e-9);
    }

    [Fact]
    public void Rain_without_a_rainy_row_cannot_be_told_from_a_total()
    {
        var file = GuessedFile.Read("Time,Temp (°C),Rain (mm)\n" + string.Concat(Hours(new(2026, 6, 1), 48).Select(t => t.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture) + ",20.0,0.0\n")));
        Assert.False(file.Source.Columns[WeatherQuantity.Rain].Counter);
        Assert.False(file.IsSure("columns.rain"));
    }

    [Fact]
    public void A_header_that_stands_twice_is_not_used()
    {
        var guess = GuessedFile.Only("Time,Temp (°C),Temp (°C),RH (%)\n2026-06-01 13:00,25.0,21,50\n2026-06-01 14:00,25.0,21,50\n2026-06-01 15:00,25.0,21,50\n2026-06-01 16:00,25.0,21,50\n");
        Assert.Equal([WeatherQuantity.RelativeHumidity], guess.Source!.Columns.Keys);
        Assert.All(guess.Left, left => Assert.Contains("twice", left.Why, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("2026-06-01 13:00,25.0,50\n2026-06-01 14:00,25.0,50\n", "add a header")]
    [InlineData("Dear superintendent,\nhere is the weather, hot and dry.\n", "look at the file")]
    [InlineData("", "look at the file")]
    [InlineData("Date,Hour,Temp (°C)\n6/14/2026,22,25\n6/14/2026,23,25\n6/14/2026,24,25\n6/15/2026,1,25\n", "write the time so that it can be read")]
    [InlineData("Date,Time,Temp (°C)\n2026-06-01,0,25\n2026-06-01,100,25\n2026-06-01,200,25\n", "write the time so that it can be read")]
    [InlineData("Year,Day,Time,Temp (°C)\n2026,152,1300,25.0\n2026,152,1400,25.0\n", "write the time so that it can be read")]
    public void What_is_not_recognised_says_what_was_seen_and_what_to_do(string text, string todo)
    {
        var guess = GuessedFile.Only(text.Length == 0 ? Encoding.UTF8.GetBytes("\n") : Encoding.UTF8.GetBytes(text));
        Assert.Null(guess.Source);
        Assert.Contains(guess.Findings, finding => string.Equals(finding.Value, todo, StringComparison.Ordinal));
    }

    [Fact]
    public void Bytes_that_are_no_text_are_not_guessed_at()
    {
        var dice = new Dice(7);
        var guess = GuessedFile.Only([.. Enumerable.Range(0, 4000).Select(_ => (byte)dice.Whole(0, 255))]);
        Assert.Null(guess.Source);
    }

    private static IEnumerable<DateTime> Hours(DateOnly first, int count) =>
        Enumerable.Range(0, count).Select(hour => first.ToDateTime(TimeOnly.MinValue).AddHours(hour));
}
