using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Reports.Words;

/// <summary>Titles and sentences of the parts after the round.</summary>
internal static class SectionWords
{
    public static readonly Phrase Overnight = new("Overnight");
    public static readonly Phrase EtoExplained = new("water the weather draws from short grass in a day");
    public static readonly Phrase DidItRun = new("Did it run?");
    public static readonly Phrase Driest = new("Take hose and probe");
    public static readonly Phrase OldWeather = new("Reckoned without sound weather: look and probe before you act on this list.");
    public static readonly Phrase NoDry = new("No zone stands out as dry.");
    public static readonly Phrase Wettest = new("Wet ground: carts and mowers");
    public static readonly Phrase NoWet = new("Nothing drained or ran off in the last 72 hours.");
    public static readonly Phrase WetCaution = new("Keep carts and mowers off until it firms up; you see the ground, we do not.");
    public static readonly Phrase Standing = new("In force");
    public static readonly Phrase NoStanding = new("No order, no restriction, no closed season.");
    public static readonly Phrase Fit = new("Does the night fit?");
    public static readonly Phrase Moisture = new("Moisture by area");
    public static readonly Phrase Why = new("Why, program by program");
    public static readonly Phrase Outlook = new("If nobody visits and no rain falls");
    public static readonly Phrase Water = new("Water used");
    public static readonly Phrase Pointers = new("Base minutes worth a look");
    public static readonly Phrase Cautions = new("Cautions");
    public static readonly Phrase Explained = new("Words on this sheet");

    public static readonly Phrase NothingDue = new("No program was due.");
    public static readonly Phrase Answered = new("answered");
    public static readonly Phrase DidNotRun = new("If one did not run, say so with a line in logbook.csv:");
    public static readonly Phrase Chain = new("Step by step");

    public static Phrase DidNotRunLine(DueRun run, SheetView view) =>
        Answers.DidNotRunLine(run.Program.ToString(), run.Date, run.IsOneOfSeveral ? (run.Start, run.Finishes) : null, view.Sheet.Site.Clock);

    /// <summary>"starts since 05:00 yesterday": a day back, so that every start is asked about on one morning's sheet.</summary>
    public static Phrase StartsSince(SheetView view) => $"starts since {view.Words.When(view.Sheet.AsOf - DueRun.LookedBack)}";

    public static Phrase RainLine(OvernightRain rain, SiteWords words) =>
        $"gauge {rain.Gauge} {words.DepthOf(rain.YesterdayMm)} yesterday{HandRainWords.Source(rain, words.SheetDate.AddDays(-1))}, {words.DepthOf(rain.SinceMidnightMm)} since midnight{HandRainWords.Source(rain, words.SheetDate)}{(rain.IsPartAside ? PartAside : Phrase.Empty)}";

    private static readonly Phrase PartAside = new(" (a reading was set aside)");

    /// <summary>A line for every reading by hand that has a say in the rain above.</summary>
    public static IEnumerable<Phrase> RainByHand(SheetView view) =>
        view.Sheet.Overnight.Rain.SelectMany(r => r.ByHand).Select(h => HandRainWords.Line(h, view.Sheet.AsOf, view.Words));

    public static Phrase Lowest(Overnight night, SiteWords words) => night.LowestTemperatureC is { } low
        ? $"{words.Temperature(low)}{(night.LowestAt is { } at ? $" at {words.When(at)}" : Phrase.Empty)}"
        : CommonWords.Unknown;

    public static Phrase EtoLine(Overnight night, Freshness fresh, SiteWords words) =>
        $"ETo, the {EtoExplained}: yesterday {words.DepthOf(night.YesterdayEtoMm)}, expected today {words.DepthOf(fresh.ExpectedEtoMm)}.";

    public static Phrase LowestLine(Overnight night, SiteWords words) => $"Lowest temperature of the night: {Lowest(night, words)}.";

    /// <summary>"measured, by the hour; wind speed: 2 h interpolated".</summary>
    public static Phrase DayKnown(WeatherDay day, SiteWords words) =>
        Phrase.Join("; ", day.Estimated.Select(said => RecordedWords.OfQuantity(words.Recorded(said))).Prepend(FreshnessWords.Known(day.Basis)));

    public static Phrase LowHigh(WeatherDay day, SiteWords words) =>
        day is { AirTemperatureMinC: { } low, AirTemperatureMaxC: { } high } ? Phrase.Verbatim($"{words.Temperature(low)}, {words.Temperature(high)}") : CommonWords.Unknown;

    public static Phrase More(int count) => $"{SiteWords.Count(count)} more";

    /// <summary>"0.55 in below full, 0.67 in allowable".</summary>
    public static Phrase BelowFull(double depletionMm, double allowableMm, SiteWords words) =>
        $"{words.DepthOf(depletionMm)} below full, {words.DepthOf(allowableMm)} allowable";

    /// <summary>"Next start 21:30 today, ends 05:20 tomorrow."; empty for a program that is not going to start.</summary>
    public static Phrase NextRun(ProgramAdvice advice, SiteWords words) =>
        advice.NextStart is { } start && AdviceWords.NewPercent(advice) > 0
            ? $"Next start {words.When(start)}{(advice.Finishes is { } end ? $", ends {words.When(end)}" : Phrase.Empty)}."
            : Phrase.Empty;

    public static Phrase OutlookWorst(Outlook outlook, SiteWords words) =>
        $"worst: {outlook.WorstName}, {words.DepthOf(outlook.WorstBeyondMm)} past the allowable";

    public static Phrase OutlookAfter(Outlook outlook) =>
        outlook.Days == 1 ? new Phrase("After 1 day") : $"After {SiteWords.Count(outlook.Days)} days";

    public static Phrase OutlookZones(Outlook outlook) => outlook.ZonesBeyond == 0
        ? Phrase.Of($"none of {Phrase.Count(outlook.Zones, "zone", "zones")}")
        : $"{SiteWords.Count(outlook.ZonesBeyond)} of {Phrase.Count(outlook.Zones, "zone", "zones")}";
}
