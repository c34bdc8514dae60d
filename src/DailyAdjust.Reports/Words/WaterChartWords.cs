using System.Globalization;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Water;

namespace DailyAdjust.Reports.Words;

/// <summary>The chart of the month's water.</summary>
internal static class WaterChartWords
{
    /// <summary>With its figure where it lies so far above what was used that it is not drawn.</summary>
    public static Phrase KeyLimit(double litres, bool isDrawn, SiteWords words) => isDrawn ? Permit : $"{Permit}: {words.Volume(litres)}, above this chart";

    public static Phrase KeyAllotment(double litres, SiteWords words) => $"the allotment, used evenly over its year: {words.Volume(litres)} this month";

    private static readonly Phrase Permit = new("permit, a month");

    public static Phrase Heading(DateOnly month) => $"{SiteWords.MonthName(month)}, as it adds up";

    public static Phrase Title(DateOnly month) => $"Water used in {SiteWords.Month(month)}, as it adds up day by day";

    public static string Year(DateOnly month) => month.Year.ToString(CultureInfo.InvariantCulture);

    public static Phrase Description(WaterUsed water, DateOnly month, SiteWords words)
    {
        var now = water.Month.Count > 0 ? $"By {SiteWords.DayMonth(water.Month[^1].Date)} {words.Volume(water.MonthL)}." : new Phrase("Nothing is known of this month yet.");
        var before = water.YearBefore.Count > 0
            ? $" The whole month of {Year(month.AddYears(-1))}: {words.Volume(water.YearBefore.Sum(d => d.EstimatedL))}{(water.Month.Count > 0 ? $", of that {words.Volume(water.YearBefore.Where(d => d.Date.Day <= water.Month[^1].Date.Day).Sum(d => d.EstimatedL))} by this day" : Phrase.Empty)}."
            : Phrase.Empty;
        var limit = water.Limits.FirstOrDefault(l => l.Kind == LimitKind.Month) is { } most ? $" The permit allows {words.Volume(most.Limit)} a month." : Phrase.Empty;
        var allotment = water.AllotmentMonthL is { } share ? $" The allotment, used evenly over its year, gives {words.Volume(share)} this month." : Phrase.Empty;
        return now + before + limit + allotment;
    }

    /// <summary>Beside the upper end of the scale, short.</summary>
    public static string Scale(double litres, SiteWords words) => words.ShortVolume(litres);

    /// <summary>A row for each day of the month of which one of the two is known.</summary>
    public static IEnumerable<(string Day, string Now, string Before)> Rows(WaterUsed water, SiteWords words)
    {
        var now = water.Month.ToDictionary(d => d.Date.Day, d => d.EstimatedL);
        var before = water.YearBefore.ToDictionary(d => d.Date.Day, d => d.EstimatedL);
        return now.Keys.Union(before.Keys).Order().Select(day => (SiteWords.Count(day), Of(now, day), Of(before, day)));

        string Of(Dictionary<int, double> days, int day) => days.TryGetValue(day, out var litres) ? words.Volume(litres) : "";
    }
}
