using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Reports.Words;

/// <summary>Titles and sentences of the parts after the round.</summary>
internal static class SectionWords
{
    public const string Overnight = "Overnight";
    public const string EtoExplained = "water the weather draws from short grass in a day";
    public const string DidItRun = "Did it run?";
    public const string Driest = "Take hose and probe";
    public const string OldWeather = "Reckoned without sound weather: look and probe before you act on this list.";
    public const string NoDry = "No zone stands out as dry.";
    public const string Wettest = "Wet ground: carts and mowers";
    public const string NoWet = "Nothing drained or ran off in the last 72 hours.";
    public const string WetCaution = "Keep carts and mowers off until it firms up; you see the ground, we do not.";
    public const string Standing = "In force";
    public const string NoStanding = "No order, no restriction, no closed season.";
    public const string Fit = "Does the night fit?";
    public const string Moisture = "Moisture by area";
    public const string Why = "Why, program by program";
    public const string Outlook = "If nobody visits and no rain falls";
    public const string Water = "Water used";
    public const string Pointers = "Base minutes worth a look";
    public const string Cautions = "Cautions";
    public const string Explained = "Words on this sheet";
    public const string LastDays = "The last days of weather";

    public const string NothingDue = "No program was due.";
    public const string Answered = "answered";
    public const string DidNotRun = "If one did not run, say so with a line in logbook.csv:";

    public static string DidNotRunLine(DueRun run, SheetView view) =>
        Answers.DidNotRunLine(run.Program.ToString(), run.Date, run.IsOneOfSeveral ? (run.Start, run.Finishes) : null, view.Sheet.Site.Clock);

    public const string Chain = "Step by step";

    public static string Night(DateOnly sheetDate)
    {
        var before = sheetDate.AddDays(-1);
        return before.Month == sheetDate.Month
            ? $"Night of {before.Day} to {SiteWords.DayMonth(sheetDate)}"
            : $"Night of {SiteWords.DayMonth(before)} to {SiteWords.DayMonth(sheetDate)}";
    }

    public static string RainLine(OvernightRain rain, SiteWords words) =>
        $"gauge {rain.Gauge} {words.DepthOf(rain.YesterdayMm)} yesterday{HandRainWords.Source(rain, words.SheetDate.AddDays(-1))}, {words.DepthOf(rain.SinceMidnightMm)} since midnight{HandRainWords.Source(rain, words.SheetDate)}{(rain.IsPartAside ? PartAside : "")}";

    private const string PartAside = " (a reading was set aside)";

    /// <summary>A line for every reading by hand that has a say in the rain above.</summary>
    public static IEnumerable<string> RainByHand(SheetView view) =>
        view.Sheet.Overnight.Rain.SelectMany(r => r.ByHand).Select(h => HandRainWords.Line(h, view.Sheet.AsOf, view.Words));

    public static string Lowest(Overnight night, SiteWords words) => night.LowestTemperatureC is { } low
        ? words.Temperature(low) + (night.LowestAt is { } at ? $" at {words.When(at)}" : "")
        : CommonWords.Unknown;

    public static string EtoLine(Overnight night, Freshness fresh, SiteWords words) =>
        $"ETo, the {EtoExplained}: yesterday {words.DepthOf(night.YesterdayEtoMm)}, expected today {words.DepthOf(fresh.ExpectedEtoMm)}.";

    public static string LowestLine(Overnight night, SiteWords words) => $"Lowest temperature of the night: {Lowest(night, words)}.";

    /// <summary>"measured, by the hour; wind speed: 2 h interpolated".</summary>
    public static string DayKnown(WeatherDay day) =>
        string.Join("; ", day.Estimated.Prepend(FreshnessWords.Known(day.Basis)));

    public static string LowHigh(WeatherDay day, SiteWords words) =>
        day is { AirTemperatureMinC: { } low, AirTemperatureMaxC: { } high } ? $"{words.Temperature(low)}, {words.Temperature(high)}" : CommonWords.Unknown;

    public static string More(int count) => $"{SiteWords.Count(count)} more";

    /// <summary>"0.55 in below full, 0.67 in allowable".</summary>
    public static string BelowFull(double depletionMm, double allowableMm, SiteWords words) =>
        $"{words.DepthOf(depletionMm)} below full, {words.DepthOf(allowableMm)} allowable";

    /// <summary>"Next start 21:30 today, ends 05:20 tomorrow."; empty for a program that is not going to start.</summary>
    public static string NextRun(ProgramAdvice advice, SiteWords words) =>
        advice.NextStart is { } start && AdviceWords.NewPercent(advice) > 0
            ? $"Next start {words.When(start)}" + (advice.Finishes is { } end ? $", ends {words.When(end)}." : ".")
            : "";

    public static string OutlookWorst(Outlook outlook, SiteWords words) =>
        $"worst: {outlook.WorstName}, {words.DepthOf(outlook.WorstBeyondMm)} past the allowable";

    public static string OutlookAfter(Outlook outlook) =>
        outlook.Days == 1 ? "After 1 day" : $"After {SiteWords.Count(outlook.Days)} days";

    public static string OutlookZones(Outlook outlook) => outlook.ZonesBeyond == 0
        ? $"none of {CommonWords.Count(outlook.Zones, "zone", "zones")}"
        : $"{SiteWords.Count(outlook.ZonesBeyond)} of {CommonWords.Count(outlook.Zones, "zone", "zones")}";
}
