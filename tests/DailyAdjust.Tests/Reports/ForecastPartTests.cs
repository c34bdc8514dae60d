using System.Text.Json;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Reports;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>How the sheet shows what is forecast.</summary>
public sealed class ForecastPartTests
{
    [Fact]
    public void Text_tells_the_days_the_night_and_how_old_it_is()
    {
        var text = Unfolded(Rendered.File(ReportFiles.FullText, With(Forecast())));
        Assert.Contains("Forecast made at 03:12 today. Nothing of it was measured, and its rain is not booked. ", text, StringComparison.Ordinal);
        Assert.Contains("Today: rain 0.10 in, chance 40 %; 57 °F, 81 °F. Thu 16 July: rain, amount not forecast, chance 55 %.", text, StringComparison.Ordinal);
        Assert.Contains("Tonight (18:00 to 09:00): rain 0.30 in, chance 80 %; lowest 36 °F; wind up to 12 mph. Frost caution,", text, StringComparison.Ordinal);
        Assert.Contains("Spray drift caution, wind above 11 mph", text, StringComparison.Ordinal);

        var metric = Rendered.File(ReportFiles.FullText, With(Forecast()) with { Site = InventedCourse.Build(UnitSystem.Metric) });
        Assert.Contains("lowest 2.0 °C; wind up to 5.2 m/s", metric, StringComparison.Ordinal);
    }

    [Fact]
    public void Cautions_begin_at_2_degrees_and_above_5_metres_a_second()
    {
        var mild = Forecast() with { Days = [Forecast().Days[0] with { Night = new(2.01, 5, null) }] };
        var text = Rendered.File(ReportFiles.FullText, With(mild));
        Assert.DoesNotContain("caution", text, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("rain not forecast; lowest 36 °F", text, StringComparison.Ordinal);
        var unknown = Rendered.File(ReportFiles.FullText, With(Forecast() with { Days = [Forecast().Days[0] with { Night = new(null, null, null) }] }));
        Assert.Contains("lowest not forecast; wind not forecast", unknown, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_shows_it_after_the_night_before()
    {
        var page = HtmlReportTests.Readable(Rendered.File(ReportFiles.Html, With(Forecast())));
        var places = new[] { "<h2>Overnight</h2>", "<h2>Forecast</h2>", "<h2>Did it run?" }.Select(h => page.IndexOf(h, StringComparison.Ordinal)).ToList();
        Assert.All(places, p => Assert.True(p > 0));
        Assert.Equal(places.Order(), places);
        Assert.Contains("<td>tomorrow</td><td class=\"n\">not forecast</td><td class=\"n\">55 %</td>", page, StringComparison.Ordinal);
        Assert.NotNull(HtmlReportTests.AsXml(Rendered.File(ReportFiles.Html, With(Forecast()))));
    }

    [Fact]
    public void One_that_is_too_old_is_said_to_be()
    {
        var old = With(Forecast() with { TooOld = true, Days = [] });
        foreach (var file in new[] { ReportFiles.FullText, ReportFiles.Html })
        {
            var text = Rendered.File(file, old);
            Assert.Contains("The newest forecast was made at 03:12 today: too old, so nothing on this sheet rests on it.", text, StringComparison.Ordinal);
            Assert.DoesNotContain("Tonight (", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Json_has_it_only_where_there_is_one()
    {
        using var json = JsonDocument.Parse(Rendered.File(ReportFiles.AdviceJson, With(Forecast())));
        var forecast = json.RootElement.GetProperty("forecast");
        Assert.Equal("2026-07-15T03:12", forecast.GetProperty("issued").GetString());
        var day = forecast.GetProperty("days")[0];
        Assert.Equal((2.54, 40d, 27.2, 2d), (day.GetProperty("rainMm").GetDouble(), day.GetProperty("rainChancePercent").GetDouble(), day.GetProperty("temperatureMaxC").GetDouble(), day.GetProperty("night").GetProperty("temperatureMinC").GetDouble()));
        Assert.Equal(JsonValueKind.Null, forecast.GetProperty("days")[1].GetProperty("rainMm").ValueKind);
        Assert.DoesNotContain("\"forecast\"", Rendered.File(ReportFiles.AdviceJson), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_forecast_no_file_mentions_one()
    {
        foreach (var file in new[] { ReportFiles.FullText, ReportFiles.Html, ReportFiles.AdviceJson })
        {
            Assert.DoesNotContain("forecast", Rendered.File(file), StringComparison.OrdinalIgnoreCase);
        }
    }

    /// <summary>Without the line breaks of a narrow terminal.</summary>
    private static string Unfolded(string text) => string.Join(' ', text.Split((char[])['\n', ' '], StringSplitOptions.RemoveEmptyEntries));

    public static SheetForecast Forecast() => new(InventedMorning.At(0, 3, 12), TooOld: false,
    [
        new ForecastDay(InventedMorning.Date, 27.2, 13.9) { Rain = [Rain(14, 2.54, 40)], Night = new(2.0, 5.2, Rain(22, 7.62, 80)) },
        new ForecastDay(InventedMorning.Date.AddDays(1), null, null) { Rain = [Rain(30, null, 55)] },
        new ForecastDay(InventedMorning.Date.AddDays(2), 25, 12),
    ]);

    public static MorningSheet With(SheetForecast forecast) => InventedMorning.Build() with { Forecast = forecast };

    private static RainAhead Rain(int hour, double? mm, double chance) => new(InventedMorning.At(0, 0, 0).AddHours(hour), InventedMorning.At(0, 0, 0).AddHours(hour + 1), mm, chance);
}
