using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>What is in force, who ordered it, and how many days are left.</summary>
internal static class StandingWords
{
    /// <summary>"C1: Hold: drainage work (M. Ortiz). Through Thu 18 June, 3 days left."</summary>
    public static Phrase Order(StandingOrder order, SheetView view)
    {
        var words = view.Words;
        var begins = order.Begins is { } from ? $" From {words.When(from)}." : Phrase.Empty;
        var by = order.By.Length > 0 ? $" Ordered by {order.By}." : Phrase.Empty;
        var ends = order.Until is { } until ? $" {Ends(until, order.UntilClock, words)}, {Left(until, words)}." : new Phrase(" No end given.");
        return $"{Where(order.Where, view)}: {FreshnessWords.Sentence(order.What)}{by}{begins}{ends}";
    }

    /// <summary>"the whole site", "area greens", "Greens 5-7 (C2/P1)", "C2 (behind the ninth green)".</summary>
    private static Phrase Where(string where, SheetView view) => where switch
    {
        "site" => new("the whole site"),
        "pump" => new("pump"),
        _ when where.StartsWith(Area, StringComparison.Ordinal) => $"area {where[Area.Length..]}",
        _ when view.Sheet.Programs.FirstOrDefault(p => string.Equals(p.Key.ToString(), where, StringComparison.Ordinal)) is { } program => Phrase.Verbatim(view.Label(program.Key)),
        _ => Phrase.Verbatim(view.BoxLabel(where)),
    };

    private const string Area = "area:";

    /// <summary>"Through Thu 18 June", "Until 18:00 today".</summary>
    public static Phrase Ends(DateOnly date, TimeOnly? clock, SiteWords words) =>
        clock is { } time ? Phrase.Of($"Until {SiteWords.Clock(time)} {words.Day(date)}") : $"Through {(date == words.SheetDate ? words.Day(date) : SiteWords.Date(date))}";

    /// <summary>"3 days left".</summary>
    public static Phrase Left(DateOnly until, SiteWords words) => (until.DayNumber - words.SheetDate.DayNumber) switch
    {
        <= 0 => new("the last day"),
        1 => new("1 day left"),
        var days => $"{SiteWords.Count(days)} days left",
    };
}
