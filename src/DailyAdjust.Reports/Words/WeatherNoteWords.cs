using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>What of the last days' weather is assumed, set aside or doubtful: in a line above the round, in full behind it.</summary>
internal static class WeatherNoteWords
{
    /// <summary>So many lines stand above the round as they are.</summary>
    private const int Few = 2;

    public static readonly Phrase Title = new("The last days' weather: assumed, set aside or doubtful");
    public static readonly Phrase Which = new("Which, and why");
    public static readonly Phrase WhichOnPaper = new("Which, and why, stands after the round.");
    private static readonly Phrase SomeSetAside = new("Some values were set aside.");
    private static readonly Phrase SomeDoubtful = new("A sensor is doubtful.");

    public static bool IsLong(Freshness fresh) => Assumed(fresh).Count + fresh.SetAside.Count + fresh.Doubts.Count > Few;

    /// <summary>Sentences, what is the same of several days once: "Thu 19 November to Wed 25 November: part of it estimated."</summary>
    public static IReadOnlyList<Phrase> Assumed(Freshness fresh) =>
    [
        .. Dated(fresh).GroupBy(n => n.What).Select(same => Phrase.Of($"{Days(same.Select(n => n.Date!.Value))}: {same.Key}.")),
        .. fresh.AssumedNotes.Where(n => n.Date is null).Select(n => n.Sentence),
    ];

    /// <summary>"Thu 19 November to Wed 25 November. Some values were set aside."; empty = there is nothing to say.</summary>
    public static Phrase Short(Freshness fresh) => Phrase.Sentences(
        Dated(fresh).Any() ? Phrase.Of($"{FreshnessWords.AssumedTitle}: {Days(Dated(fresh).Select(n => n.Date!.Value))}.") : Phrase.Empty,
        fresh.SetAside.Count > 0 ? SomeSetAside : Phrase.Empty,
        fresh.Doubts.Count > 0 ? SomeDoubtful : Phrase.Empty);

    private static IEnumerable<AssumedNote> Dated(Freshness fresh) => fresh.AssumedNotes.Where(n => n.Date is not null);

    /// <summary>Days that follow each other as a span.</summary>
    private static Phrase Days(IEnumerable<DateOnly> dates)
    {
        List<DateOnly> days = [.. dates.Distinct().Order()];
        var spans = days.Select((day, i) => (day, Run: day.DayNumber - i)).GroupBy(d => d.Run, d => d.day).Select(run => (From: run.First(), To: run.Last()));
        return Phrase.Join(", ", spans.Select(s => s.From == s.To ? SiteWords.Date(s.From) : Phrase.Of($"{SiteWords.Date(s.From)} to {SiteWords.Date(s.To)}")));
    }
}
