using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Reports.Words;

/// <summary>How fresh the sheet is, what is assumed, and what waits for an answer.</summary>
internal static class FreshnessWords
{
    private const int Most = 6;

    public static readonly Phrase NoAdviceTitle = new("No sound advice today");
    public static readonly Phrase LeaveDials = new("Every dial stays as it is set until weather comes in.");
    public static readonly Phrase NotAnsweredTitle = new("Not answered");
    public static readonly Phrase NotConfirmedTitle = new("Not confirmed");
    public static readonly Phrase RainTitle = new("Rain not known");
    public static readonly Phrase ProbeTitle = new("Probe first");
    public static readonly Phrase FailedTitle = new("Please note");
    public static readonly Phrase AssumedTitle = new("Assumed or estimated");
    public static readonly Phrase SetAsideTitle = new("Set aside, not used");
    public static readonly Phrase DoubtsTitle = new("Doubtful sensor, used");

    public static Phrase Through(Freshness freshness, SiteWords words) => freshness.WeatherThrough is { } end
        ? $"Weather through {words.When(end)}{(freshness.Station.Length > 0 ? $", station {freshness.Station}" : Phrase.Empty)}.{(freshness.Assumed.Count + freshness.SetAside.Count + freshness.UnknownRain.Count == 0 ? new Phrase(" Everything measured.") : Phrase.Empty)}"
        : new Phrase("No weather has come in yet.");

    public static Phrase NoAdvice(Freshness freshness) =>
        Sentence(freshness.NoAdvice ?? Phrase.Empty) + (freshness.NoAdviceSince is { } since ? $" Since {SiteWords.Date(since)}." : Phrase.Empty);

    /// <summary>"Mon 8 June", and of a date with two rounds which sheet it was.</summary>
    public static Phrase Named(OpenRound round) => SiteWords.Date(round.Date) + (round.Issue is { } issue ? $" (sheet {CodeWords.SheetId(round.Date, issue)})" : Phrase.Empty);

    public static Phrase PassedOver(IReadOnlyList<DateOnly> rounds) =>
        $"{(rounds.Count == 1 ? Phrase.Of($"the round of {SiteWords.Date(rounds[0])}") : $"{SiteWords.Count(rounds.Count)} rounds from {SiteWords.Date(rounds[0])} to {SiteWords.Date(rounds[^1])}")}, though a later one is. The ground is reckoned as if nothing had been turned on them; if it was, it may be drier or wetter than this sheet says.";

    /// <summary>Of a sheet: each open question is judged both ways, and what each way would say stands beside it.</summary>
    public static Phrase Round(OpenRound round) =>
        $"the round of {Named(round)}. Its programs are judged both ways, done and not done.";

    /// <summary>The same of several, where there is little room.</summary>
    public static Phrase Rounds(IReadOnlyList<OpenRound> rounds) =>
        $"{(rounds.Count > 3 ? Phrase.Of($"{SiteWords.Count(rounds.Count)} rounds from {Named(rounds[0])} to {Named(rounds[^1])}") : $"the rounds of {Phrase.List([.. rounds.Select(Named)])}")}. Their programs are judged both ways, done and not done.";

    /// <summary>Of a list that is reckoned by the logbook alone.</summary>
    public static Phrase RoundAsLogged(OpenRound round) =>
        $"the round of {Named(round)}. Today's numbers take it that nothing was changed.";

    /// <summary>One sentence for all zones whose moisture is only assumed.</summary>
    public static Phrase Probe(IReadOnlyList<AssumedZone> zones)
    {
        var named = zones.Select(z => z.Name).ToList();
        var since = zones.Select(z => z.Since).Distinct().ToList();
        return $"{Several(named)}. How wet they were {(since.Count == 1 ? $"on {SiteWords.Date(since[0])}" : new Phrase("at first"))} is only assumed, so nothing is cut or left out on that until rain or water fills them or a probe tells.";
    }

    private static Phrase Several(List<string> names) =>
        names.Count > Most ? $"{string.Join(", ", names.Take(Most))} and {SiteWords.Count(names.Count - Most)} more" : Phrase.ListNames(names);

    /// <summary>A sentence for what stands on a dial, one for minutes that are keyed in, each with what to do at the box.</summary>
    public static IEnumerable<(Phrase Words, Phrase Read)> Confirm(SheetView view) => Confirm(view.Sheet.Freshness.NeverConfirmed, view.Sheet.Site, view.Label);

    /// <summary>The same of a sheet that was issued.</summary>
    public static IEnumerable<(Phrase Words, Phrase Read)> Confirm(IReadOnlyList<ProgramKey> never, Site site, Func<ProgramKey, string> label)
    {
        foreach (var box in never.GroupBy(p => site.ControllerOf(p.Controller)?.Applies == PercentApplies.None).OrderBy(g => g.Key))
        {
            List<string> programs = [.. box.Select(label)];
            yield return (
                box.Key ? Phrase.Of($"{Several(programs)}. {MinutesWords.Taken}") : $"{Several(programs)}. Taken to run at 100 % until somebody reads the dial.",
                box.Key ? MinutesWords.Read : ReadDials);
        }
    }

    /// <summary>One sentence for a gauge and all its unknown days, newest first.</summary>
    public static Phrase UnknownRain(IReadOnlyList<UnknownRain> days, SiteWords words)
    {
        var named = days.Take(Most).Select(d => SiteWords.Date(d.Date) + (d.MeasuredPartMm > 0 ? $" ({words.DepthOf(d.MeasuredPartMm)} of it was measured)" : Phrase.Empty));
        var more = days.Count > Most ? $" and {SiteWords.Count(days.Count - Most)} days more" : Phrase.Empty;
        return $"gauge {days[0].Gauge}, {Phrase.Join(", ", named)}{more}. It counts as none until somebody says.";
    }

    /// <summary>The gauges with unknown rain, in order of name.</summary>
    public static IEnumerable<IReadOnlyList<UnknownRain>> UnknownByGauge(Freshness freshness) =>
        freshness.UnknownRain.GroupBy(r => r.Gauge, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => g.ToList());

    public static readonly Phrase BothWays = new("What today says either way");
    public static readonly Phrase AnswerRound = new("Done as it said:");
    public static readonly Phrase AnswerRounds = new("All done as they said:");
    public static readonly Phrase AnswerAll = new("That one and all rounds before it that were not answered:");

    /// <summary>The first date whose round was not answered, of programs that one round is asked of; null = it is the only one.</summary>
    public static DateOnly? Since(OpenRound round, SheetView view) => view.NotAnswered.Where(p => p.Unanswered!.Round == round).Select(p => (DateOnly?)p.Unanswered!.Since).Min() is { } first && first < round.Date ? first : null;
    private static readonly Phrase ReadDials = new("Read the dials");

    public static readonly Phrase LogbookLine = new("Answer with a line in logbook.csv:");

    /// <summary>How a day's ETo is known, for people.</summary>
    public static Phrase Known(EtoBasis basis) => basis switch
    {
        EtoBasis.Hourly => new("measured, by the hour"),
        EtoBasis.Daily => new("measured, by the day"),
        EtoBasis.PartEstimated => new("partly estimated"),
        EtoBasis.TemperatureOnly => new("from temperature only"),
        EtoBasis.Supplied => new("the station's own figure"),
        EtoBasis.OtherStation => new("from another station"),
        EtoBasis.Expected => new("expected, not measured"),
        _ => CommonWords.Unknown,
    };

    public static Phrase Sentence(Phrase phrase) => phrase.Shaped(Sentence);

    /// <summary>With a full stop, where it has no end of its own.</summary>
    public static string Sentence(string text) => text.Length == 0 || text[^1] is '.' or '!' or '?' ? text : text + ".";
}
