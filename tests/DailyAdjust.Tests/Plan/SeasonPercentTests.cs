using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Weather;
using DailyAdjust.Reports.Words;
using DailyAdjust.Tests.Advice;
using Xunit;

namespace DailyAdjust.Tests.Plan;

/// <summary>Percentages through the year, and the rain that they leave to the sky.</summary>
public class SeasonPercentTests
{
    private static readonly double[] Eto = [0, 1, 2, 3, 4, 5, 6, 5, 4, 3, 2, 1];

    /// <summary>Colorado State Univ. Extension: month's need / peak month's need; base minutes are set for the peak = 100 %.</summary>
    [Fact]
    public void A_month_gets_its_need_over_the_peak_months_need()
    {
        var season = Assert.Single(SeasonPercent.Of(SmallCourse.OneStation(0).Site, Eto, new MonthRain?[12]));
        Assert.Equal(100, season.Months[6].NoRain.Percent);
        Assert.Equal(50, season.Months[3].NoRain.Percent);
        Assert.Equal(500.0 / 6, season.Months[5].NoRain.ExactPercent, 1e-9);
        Assert.Equal(85, season.Months[5].NoRain.Percent);
        Assert.Equal(0, season.Months[0].NoRain.Percent);
        Assert.All(season.Months, m => Assert.Null(m.AfterRain));
    }

    [Theory]
    [InlineData(11, 12)]
    [InlineData(12, 11)]
    public void A_year_has_12_months_of_either(int eto, int rain) =>
        Assert.Throws<ArgumentException>(() => SeasonPercent.Of(SmallCourse.OneStation(0).Site, new double[eto], new MonthRain?[rain]));

    [Fact]
    public void Usual_rain_is_taken_off_the_months_need()
    {
        var rain = new MonthRain?[12];
        (rain[6], rain[1]) = (new(93, FromNormals: true), new(500, FromNormals: true));
        var months = Assert.Single(SeasonPercent.Of(SmallCourse.OneStation(0).Site, Eto, rain)).Months;
        Assert.Equal(50, months[6].AfterRain!.ExactPercent, 1e-9);
        Assert.Equal(0, months[1].AfterRain!.Percent);
        Assert.Null(months[2].AfterRain);
    }

    /// <summary>Texas A&amp;M: the first 0.10 in lost; to 1 in in full; 1 to 2 in two thirds; above 2 in none.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.08, 0)]
    [InlineData(0.25, 0.15)]
    [InlineData(1.0, 0.90)]
    [InlineData(1.5, 1.2333)]
    [InlineData(2.0, 1.5667)]
    [InlineData(3.0, 1.5667)]
    public void Effective_rain_of_a_day(double inches, double effective) =>
        Assert.Equal(effective, EffectiveRain.OfDay(inches * Depth.MmPerInch) / Depth.MmPerInch, 0.00005);

    /// <summary>From memory: FAO training manual 3; both branches meet at 75 mm.</summary>
    [Theory]
    [InlineData(10, 0)]
    [InlineData(35, 11)]
    [InlineData(75, 35)]
    [InlineData(90, 47)]
    public void Effective_rain_of_a_month_of_which_only_the_total_is_known(double mm, double effective) =>
        Assert.Equal(effective, EffectiveRain.OfMonthlyTotal(mm), 1e-9);

    /// <summary>From memory: WMO-No. 1203, a mean over a period takes at least ten years. Each June of the gauge has one inch on one day: 0.9 in of it serve.</summary>
    [Theory]
    [InlineData(1, false, null, null)]
    [InlineData(9, false, null, null)]
    [InlineData(9, true, 11.0, null)]
    [InlineData(10, false, 0.9 * 25.4, 10)]
    [InlineData(12, true, 0.9 * 25.4, 12)]
    public void Usual_rain_rests_on_ten_years_of_days_or_on_normals(int years, bool normals, double? mm, int? counted)
    {
        var days = Junes(years);
        var june = EffectiveRain.OfYear(days, "yard", new(2040, 1, 1), normals ? [.. Enumerable.Repeat(35.0, 12)] : [])[5];
        Assert.Equal((mm is null, counted), (june is null, june?.Years));
        Assert.Equal(mm ?? 0, june?.Mm ?? 0, 1e-9);
        Assert.Equal(years, EffectiveRain.OfMonths(days, "yard", new(2040, 1, 1))[5]!.Years);
        Assert.Null(EffectiveRain.OfMonths(days, "yard", new(2040, 1, 1))[6]);
    }

    [Fact]
    public void A_month_with_too_many_unknown_days_is_no_year()
    {
        IReadOnlyList<WeatherDay> days = [.. Junes(10).Where(d => d.Date.Year != 2020 || d.Date.Day > 4)];
        Assert.Equal(9, EffectiveRain.OfMonths(days, "yard", new(2040, 1, 1))[5]!.Years);
        Assert.Null(EffectiveRain.OfYear(days, "yard", new(2040, 1, 1), [])[5]);
    }

    [Fact]
    public void Words_say_what_it_rests_on_and_how_few_years_there_are()
    {
        static IReadOnlyList<string> Said(int years, params double[] normals) =>
            SeasonRainWords.Of(EffectiveRain.OfYear(Junes(years), "yard", new(2040, 1, 1), normals), EffectiveRain.OfMonths(Junes(years), "yard", new(2040, 1, 1)));
        Assert.Equal(
            [
                "This site's own days know June of 1 year only: that is what fell, not what is usual, and is not taken off (a mean takes at least 10 years, a normal 30).",
                "No usual rain is known of January to December: go by the percentages without rain.",
            ],
            Said(1));
        Assert.Equal(["Usual rain of June: from this site's own days, 11 years.", "No usual rain is known of January to May and July to December: go by the percentages without rain."], Said(11));
        Assert.Equal(["Usual rain of June: from this site's own days, 11 years.", "Usual rain of January to May and July to December: from the normals in site.yaml."], Said(11, [.. Enumerable.Repeat(35.0, 12)]));
        Assert.Equal(["Usual rain of January to December: from the normals in site.yaml."], Said(0, [.. Enumerable.Repeat(35.0, 12)]));
    }

    private static IReadOnlyList<WeatherDay> Junes(int years) =>
    [
        .. from year in Enumerable.Range(2015, years)
           from day in Enumerable.Range(1, 30)
           let mm = day == 10 ? Depth.MmPerInch : 0
           select new WeatherDay { Date = new(year, 6, day), Station = "", EtoMm = 4, Basis = EtoBasis.Hourly, Rain = [new GaugeDay("yard", mm, [], RainBasis.Measured, 0)] },
    ];
}
