using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Reports.Words;

/// <summary>How fresh the sheet is, what is assumed, and what waits for an answer.</summary>
internal static class FreshnessWords
{
    private const int Most = 6;

    public const string NoAdviceTitle = "No sound advice today";
    public const string LeaveDials = "Every dial stays as it is set until weather comes in.";
    public const string NotAnsweredTitle = "Not answered";
    public const string NotConfirmedTitle = "Not confirmed";
    public const string RainTitle = "Rain not known";
    public const string ProbeTitle = "Probe first";
    public const string FailedTitle = "Please note";
    public const string AssumedTitle = "Assumed or estimated";
    public const string SetAsideTitle = "Set aside, not used";
    public const string DoubtsTitle = "Doubtful sensor, used";

    public static string Through(Freshness freshness, SiteWords words) => freshness.WeatherThrough is { } end
        ? $"Weather through {words.When(end)}{(freshness.Station.Length > 0 ? ", station " + freshness.Station : "")}." + (freshness.Assumed.Count + freshness.SetAside.Count + freshness.UnknownRain.Count == 0 ? " Everything measured." : "")
        : "No weather has come in yet.";

    public static string NoAdvice(Freshness freshness) =>
        Sentence(freshness.NoAdvice ?? "") + (freshness.NoAdviceSince is { } since ? $" Since {SiteWords.Date(since)}." : "");

    /// <summary>"Mon 8 June", and of a date with two rounds which sheet it was.</summary>
    public static string Named(OpenRound round) => SiteWords.Date(round.Date) + (round.Issue is { } issue ? $" (sheet {CodeWords.SheetId(round.Date, issue)})" : "");

    public static string PassedOver(IReadOnlyList<DateOnly> rounds) =>
        $"{(rounds.Count == 1 ? $"the round of {SiteWords.Date(rounds[0])}" : $"{SiteWords.Count(rounds.Count)} rounds from {SiteWords.Date(rounds[0])} to {SiteWords.Date(rounds[^1])}")}, "
        + "though a later one is. The ground is reckoned as if nothing had been turned on them; if it was, it may be drier or wetter than this sheet says.";

    /// <summary>Of a sheet: each open question is judged both ways, and what each way would say stands beside it.</summary>
    public static string Round(OpenRound round) =>
        $"the round of {Named(round)}. Its programs are judged both ways, done and not done.";

    /// <summary>Of a list that is reckoned by the logbook alone.</summary>
    public static string RoundAsLogged(OpenRound round) =>
        $"the round of {Named(round)}. Today's numbers take it that nothing was changed.";

    /// <summary>One sentence for all zones whose moisture is only assumed.</summary>
    public static string Probe(IReadOnlyList<AssumedZone> zones)
    {
        var named = zones.Select(z => z.Name).ToList();
        var since = zones.Select(z => z.Since).Distinct().ToList();
        return (named.Count > Most ? $"{string.Join(", ", named.Take(Most))} and {SiteWords.Count(named.Count - Most)} more" : CommonWords.List(named))
            + $". How wet they were {(since.Count == 1 ? "on " + SiteWords.Date(since[0]) : "at first")} is only assumed, so nothing is cut or left out on that until rain or water fills them or a probe tells.";
    }

    /// <summary>A sentence for what stands on a dial, one for minutes that are keyed in, each with what to do at the box.</summary>
    public static IEnumerable<(string Words, string Read)> Confirm(SheetView view) => Confirm(view.Sheet.Freshness.NeverConfirmed, view.Sheet.Site, view.Label);

    /// <summary>The same of a sheet that was issued.</summary>
    public static IEnumerable<(string Words, string Read)> Confirm(IReadOnlyList<ProgramKey> never, Site site, Func<ProgramKey, string> label)
    {
        foreach (var box in never.GroupBy(p => site.ControllerOf(p.Controller)?.Applies == PercentApplies.None).OrderBy(g => g.Key))
        {
            List<string> programs = [.. box.Select(label)];
            yield return (
                (programs.Count > Most ? $"{string.Join(", ", programs.Take(Most))} and {SiteWords.Count(programs.Count - Most)} more" : CommonWords.List(programs))
                    + (box.Key ? MinutesWords.Taken : ". Taken to run at 100 % until somebody reads the dial."),
                box.Key ? MinutesWords.Read : ReadDials);
        }
    }

    /// <summary>One sentence for a gauge and all its unknown days, newest first.</summary>
    public static string UnknownRain(IReadOnlyList<UnknownRain> days, SiteWords words)
    {
        var named = days.Take(Most).Select(d => SiteWords.Date(d.Date) + (d.MeasuredPartMm > 0 ? $" ({words.DepthOf(d.MeasuredPartMm)} of it was measured)" : ""));
        var more = days.Count > Most ? $" and {SiteWords.Count(days.Count - Most)} days more" : "";
        return $"gauge {days[0].Gauge}, {string.Join(", ", named)}{more}. It counts as none until somebody says.";
    }

    /// <summary>The gauges with unknown rain, in order of name.</summary>
    public static IEnumerable<IReadOnlyList<UnknownRain>> UnknownByGauge(Freshness freshness) =>
        freshness.UnknownRain.GroupBy(r => r.Gauge, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => g.ToList());

    public const string AnswerRound = "Done as it said:";
    public const string AnswerAll = "That one and all rounds before it that were not answered:";

    /// <summary>The first date whose round was not answered, of programs that one round is asked of; null = it is the only one.</summary>
    public static DateOnly? Since(OpenRound round, SheetView view) => view.NotAnswered.Where(p => p.Unanswered!.Round == round).Select(p => (DateOnly?)p.Unanswered!.Since).Min() is { } first && first < round.Date ? first : null;
    public const string Or = "otherwise";
    private const string ReadDials = "Read the dials";

    public static string LogbookLine => "Answer with a line in logbook.csv:";

    /// <summary>How a day's ETo is known, for people.</summary>
    public static string Known(EtoBasis basis) => basis switch
    {
        EtoBasis.Hourly => "measured, by the hour",
        EtoBasis.Daily => "measured, by the day",
        EtoBasis.PartEstimated => "partly estimated",
        EtoBasis.TemperatureOnly => "from temperature only",
        EtoBasis.Supplied => "the station's own figure",
        EtoBasis.OtherStation => "from another station",
        EtoBasis.Expected => "expected, not measured",
        _ => CommonWords.Unknown,
    };

    public static string Sentence(string text) => text.Length == 0 || text[^1] is '.' or '!' or '?' ? text : text + ".";
}
