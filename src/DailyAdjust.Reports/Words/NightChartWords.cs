using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>What the timeline of a night says, for eyes and for ears.</summary>
internal static class NightChartWords
{
    public static readonly Phrase Pump = new("pump !");
    public static readonly Phrase KeyRun = new("a program of the box, with its letter or number where there is room.");
    public static readonly Phrase KeyClash = new("two programs of a box at once, or more than the pump gives.");
    public static readonly Phrase KeyWindow = new("the watering window opens or closes.");

    /// <summary>"Tonight", "The night of Fri 17 July to Sat 18 July".</summary>
    public static Phrase Name(NightOfRuns night, SiteWords words) => night.Date == words.SheetDate
        ? new Phrase("Tonight")
        : $"The night of {SiteWords.Date(night.Date)} to {SiteWords.Date(night.Date.AddDays(1))}";

    public static Phrase Title(NightOfRuns night, SiteWords words) => $"{Name(night, words)}, box by box";

    /// <summary>A box whose programs run into each other is marked in words too.</summary>
    public static string Row(string controller, bool crosses) => crosses ? controller + " !" : controller;

    /// <param name="night">The night.</param>
    /// <param name="boxes">How many controllers run.</param>
    /// <param name="crossing">Those on which two programs run at once.</param>
    /// <param name="words">The site's.</param>
    public static Phrase Description(NightOfRuns night, int boxes, IReadOnlyList<string> crossing, SiteWords words) =>
        $"{Phrase.Count(night.Runs.Count, "run", "runs")} of {Phrase.Count(boxes, "box", "boxes")}, from {words.When(night.Runs[0].Begins)} to {words.When(night.Runs.Max(r => r.Finishes))}. {(crossing.Count > 0
            ? $"Programs run at once on {Phrase.ListNames(crossing)}."
            : new Phrase("No two programs of a box run at once."))}";
}
