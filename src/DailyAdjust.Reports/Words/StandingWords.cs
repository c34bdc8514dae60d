using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>What is in force, who ordered it, and how many days are left.</summary>
internal static class StandingWords
{
    /// <summary>"C1: Hold: drainage work (M. Ortiz). Through Thu 18 June, 3 days left."</summary>
    public static Phrase Order(StandingOrder order, SiteWords words)
    {
        var begins = order.Begins is { } from ? $" From {words.When(from)}." : Phrase.Empty;
        var by = order.By.Length > 0 ? $" Ordered by {order.By}." : Phrase.Empty;
        var ends = order.Until is { } until ? $" {Ends(until, order.UntilClock, words)}, {Left(until, words)}." : new Phrase(" No end given.");
        var where = order.Where is "site" or "pump" ? new Phrase(order.Where) : Phrase.Verbatim(order.Where);
        return $"{where}: {FreshnessWords.Sentence(order.What)}{by}{begins}{ends}";
    }

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
