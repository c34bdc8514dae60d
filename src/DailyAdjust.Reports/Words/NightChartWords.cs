using DailyAdjust.Core.Phrases;
using DailyAdjust.Reports.Html;

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
    public static string Row(NightRow row) => row.Overlaps.Count > 0 ? row.Controller + " !" : row.Controller;

    /// <param name="night">The night.</param>
    /// <param name="plot">Its drawing, which knows what runs at once.</param>
    /// <param name="words">The site's.</param>
    public static Phrase Description(NightOfRuns night, NightPlot plot, SiteWords words)
    {
        var crossing = plot.Rows.Where(r => r.Overlaps.Count > 0).Select(r => r.Controller).ToList();
        return $"{Phrase.Count(night.Runs.Count, "run", "runs")} of {Phrase.Count(plot.Rows.Count, "box", "boxes")}, from {words.When(night.Runs[0].Begins)} to {words.When(night.Runs.Max(r => r.Finishes))}. {(crossing.Count > 0
            ? $"Programs run at once on {Phrase.ListNames(crossing)}."
            : new Phrase("No two programs of a box run at once."))}";
    }
}
