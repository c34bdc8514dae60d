using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Water;

namespace DailyAdjust.Reports.Words;

/// <summary>The books of a week or a season.</summary>
internal static class SummaryWords
{
    public const string Title = "Water used";
    public const string ByProgram = "By program";
    public const string ByArea = "By area";
    public const string Limits = "Against what the place may take";
    public const string Area = "area";
    public const string ByHand = "started by hand";
    public const string Water = "water";
    public const string Share = "share";
    public const string Skips = "skips";
    public const string LeftOut = "left out";
    public const string Irrigation = "irrigation, net";
    public const string Drained = "drained";
    public const string Beyond = "days past the allowable, a zone";
    public const string Worst = "most of them";
    public const string MostBeyond = "most days past it:";
    public const string NoLimits = "The site's description of these days names no allotment and no permit (water: in site.yaml).";
    public const string Local = "The permit itself and local rules go before anything printed here.";

    public static string Span(DateOnly from, DateOnly to) => $"{SiteWords.Date(from)} to {SiteWords.Date(to)} {to.Year}";

    public static string Estimated(WaterBooks books, SiteWords words) =>
        $"Estimated from minutes and flow: {words.Volume(books.EstimatedL)}. {Metered(books.Metered, words)}";

    public static string YearBefore(WaterBooks books, SiteWords words) => books.YearBefore is { } before
        ? $"The same dates of {before.To.Year}: {words.Volume(before.EstimatedL)}{(before.Metered is { } metered ? $", metered {words.Volume(metered.Litres)}" : "")}{Change(before.EstimatedL, books.EstimatedL)}."
        : "The balance does not reach back to the same dates of the year before.";

    public static string Saved(WaterBooks books, SiteWords words) => books.Programs.Sum(p => p.Skips) is > 0 and var skips
        ? $"{CommonWords.Count(skips, "skip", "skips")} on the sheets; starts left out after them would have run {words.Volume(books.SavedL)} at the percentage before."
        : "No sheet said skip.";

    public static string Weather(WaterBooks books, SiteWords words)
    {
        var unknown = books.Days.Count(d => d.RainMm is null);
        return $"Reference ET {words.DepthOf(books.Days.Sum(d => d.EtoMm))}, rain {words.DepthOf(books.Days.Sum(d => d.RainMm ?? 0))}{(unknown > 0 ? $" ({CommonWords.Count(unknown, "day", "days")} unknown)" : "")}.";
    }

    public static string Name(ProgramWater program) => program.Program is { } key ? program.Name.Length > 0 ? $"{program.Name} ({key})" : key.ToString() : ByHand;

    public static string ShareOf(double litres, WaterBooks books) => books.EstimatedL > 0 ? SiteWords.Percent(Math.Round(100 * litres / books.EstimatedL)) : "";

    public static string WorstOf(AreaWater area) => area.WorstDays > 0 ? $"{area.WorstZone}: {CommonWords.Count(area.WorstDays, "day", "days")}" : "";

    public static string DaysBeyond(AreaWater area) => Tables.Plain.Fixed(area.DaysBeyond, 1);

    /// <summary>One limit: the most used of it, and how often it was passed.</summary>
    /// <param name="use">Which.</param>
    /// <param name="words">The site's.</param>
    /// <param name="since">The first date of what it was held against, where the reader is to be told; null = a heading says it.</param>
    public static Phrase Limit(LimitUse use, SiteWords words, DateOnly? since = null)
    {
        var span = since is { } first ? $" since {SiteWords.DayMonth(first)}" : Phrase.Empty;
        var (used, limit) = use.Kind == LimitKind.Rate ? (words.Flow(use.Used), words.Flow(use.Limit)) : (words.Volume(use.Used), words.Volume(use.Limit));
        var share = SiteWords.Percent(Math.Round(100 * use.Used / use.Limit));
        var how = use.IsMetered ? WaterWords.Metered : WaterWords.Estimated;
        return use.Kind switch
        {
            LimitKind.Allotment => $"Allotment of the year since {SiteWords.DayMonth(use.From)} {use.From.Year}: {used} of {limit}, {share} ({how}).{Passed(use, new("It is passed."))}",
            LimitKind.Year => $"Permit, a year, since {SiteWords.DayMonth(use.From)} {use.From.Year}: {used} of {limit}, {share} ({how}).{Passed(use, new("It is passed."))}",
            LimitKind.Month => $"Permit, a month: most in {SiteWords.Month(use.From)}, {used} of {limit}, {share} ({how}).{Passed(use, $"Passed in {Phrase.Count(use.Over, "month", "months")}{span}.")}",
            LimitKind.Day => $"Permit, a day: most on {SiteWords.Date(use.From)}, {used} of {limit}, {share} ({how}).{Passed(use, $"Passed on {Phrase.Count(use.Over, "day", "days")}{span}.")}",
            _ => $"Permit, at once: most on {SiteWords.Date(use.From)}, {used} of {limit}, {share} (by the settings of the boxes).{Passed(use, $"Passed on {Phrase.Count(use.Over, "day", "days")}{span}.")}",
        };
    }

    private static Phrase Passed(LimitUse use, Phrase words) => use.Over > 0 ? $" {words}" : Phrase.Empty;

    private static string Metered(MeteredWater? metered, SiteWords words) => metered is null
        ? "No meter was read twice."
        : $"Metered from {SiteWords.Date(metered.From)} to {SiteWords.Date(metered.To)}: {words.Volume(metered.Litres)}.";

    private static string Change(double before, double now) => before > 0
        ? Math.Round(100 * (now - before) / before) switch
        {
            > 0 and var more => $": {SiteWords.Percent(more)} more now",
            < 0 and var less => $": {SiteWords.Percent(-less)} less now",
            _ => ": as much now",
        }
        : "";
}
