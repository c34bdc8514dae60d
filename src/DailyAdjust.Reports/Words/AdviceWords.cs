using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>
/// What the sheet says to do with a program. "Switch off" and "must not run" are said of a program that is not to run,
/// "turn on" of one that is; "leave" only of a dial that nobody touches.
/// </summary>
internal static class AdviceWords
{
    /// <summary>The act, as a short heading.</summary>
    public static Phrase Act(AdviceKind advice) => advice switch
    {
        AdviceKind.Set => new("SET"),
        AdviceKind.Resume => new("TURN ON"),
        AdviceKind.Skip => new("SKIP"),
        AdviceKind.Off => new("MUST NOT RUN"),
        AdviceKind.Leave => new("leave"),
        AdviceKind.KeepOff => new("stays off"),
        AdviceKind.AsSet => new("as set"),
        _ => throw new ArgumentOutOfRangeException(nameof(advice), advice, "Not an advice."),
    };

    /// <summary>The same of a program: a box without a percentage is not set to a number.</summary>
    public static Phrase Act(ProgramAdvice advice) => advice is { Advice: AdviceKind.Set, MinutesOnly: true } ? MinutesWords.Act : Act(advice.Advice);

    /// <summary>"SET 90 → 60 %", "SKIP, 100 % → off", "TURN ON, off → 75 %", "leave 100 %", "stays off".</summary>
    public static Phrase ActAndNumbers(ProgramAdvice advice) => advice switch
    {
        { NeedsVisit: true, LeavesDial: true } => $"{Act(advice.Advice)}: {LeaveDial}",
        { NeedsVisit: true, Advice: AdviceKind.Set } => $"{Act(advice)} {Old(advice)} → {New(advice)}",
        { NeedsVisit: true } => $"{Act(advice.Advice)}, {Old(advice)} → {New(advice)}",
        { Advice: AdviceKind.KeepOff or AdviceKind.Off } => Act(advice.Advice),
        { MinutesOnly: true, Present.IsOff: false } => $"{Act(advice.Advice)} {MinutesWords.Its(advice.Present.Percent)}",
        _ => $"{Act(advice.Advice)} {SiteWords.Setting(advice.Present.Percent)}",
    };

    /// <summary>The setting that the dial should show, or both where nobody answered; a percent sign only where it would not stand twice.</summary>
    public static Phrase Old(ProgramAdvice advice) => MayBeOffToo(advice)
        ? Phrase.Of($"{(advice.MinutesOnly ? MinutesWords.On : SiteWords.Setting(advice.Present.Percent))} or {(advice.Unanswered!.PauseDays is null ? CommonWords.Off : new Phrase("paused"))}")
        : advice is { Present.IsOff: true, Unanswered.Percent: > 0 and var perhaps }
        ? $"{CommonWords.Off} or {(advice.MinutesOnly ? MinutesWords.On : SiteWords.Setting(perhaps))}"
        : advice.Advice == AdviceKind.Set
        ? $"{Tables.Plain.Short(advice.Present.Percent)}{(Asked(advice) is { } asked ? $" or {Tables.Plain.Short(asked)}" : Phrase.Empty)}"
        : advice is { MinutesOnly: false, Present.IsOff: false } && Asked(advice) is { } other
        ? $"{Tables.Plain.Short(advice.Present.Percent)} or {SiteWords.Percent(other)}"
        : advice is { MinutesOnly: true, Present.IsOff: false } ? MinutesWords.On
        : SiteWords.Setting(advice.Present.Percent);

    /// <summary>By the logbook it is on, and an earlier sheet switched it off and nobody answered.</summary>
    private static bool MayBeOffToo(ProgramAdvice advice) => advice is { Present.IsOff: false, Unanswered.Kind: AdviceKind.Skip or AdviceKind.Off };

    /// <summary>" or 80 %", " or off": what else a dial may show because an unanswered sheet asked for it; empty = nothing else.</summary>
    public static Phrase OrAsked(ProgramAdvice advice) => advice.Unanswered is null ? Phrase.Empty
        : MayBeOffToo(advice) ? Phrase.Of($" or {CommonWords.Off}")
        : Asked(advice) is { } asked ? $" or {SiteWords.Percent(asked)}"
        : Phrase.Empty;

    /// <summary>Another number that an unanswered sheet asked for: it may be on the dial; null = none.</summary>
    private static double? Asked(ProgramAdvice advice) => advice.Unanswered is { Percent: > 0 and var asked } && asked != advice.Present.Percent ? asked : null;

    public static Phrase New(ProgramAdvice advice) => advice.LeavesDial ? LeaveDial : advice.PauseDays is { } days
        ? $"pause {Phrase.Count(days, "day", "days")}"
        : SiteWords.Setting(NewPercent(advice)) + (advice.DialShowsChange && NewPercent(advice) > 0 ? $" (the dial shows {Change(NewPercent(advice))})" : Phrase.Empty) + (advice.MinutesOnly && NewPercent(advice) > 0 ? MinutesWords.OfBase : Phrase.Empty);

    private static readonly Phrase LeaveDial = new("leave the dial, take its starts out");

    /// <summary>"+20", "-30" or "0": what a dial shows that counts from 100 %.</summary>
    private static string Change(double percent) => (percent > 100 ? "+" : "") + Tables.Plain.Short(percent - 100);

    /// <summary>The setting after the act, percent; 0 = off.</summary>
    public static double NewPercent(ProgramAdvice advice) => advice.Advice switch
    {
        AdviceKind.Skip or AdviceKind.Off => 0,
        AdviceKind.AsSet => advice.Present.Percent,
        _ => advice.Percent ?? advice.Present.Percent,
    };

    /// <summary>Why, for how long, and what comes next; a date that the reason names is not said twice.</summary>
    public static Phrase ReasonAndUntil(ProgramAdvice advice, SiteWords words) => Phrase.Sentences(Check(advice), advice.LeavesDial || advice.Advice != AdviceKind.Off ? advice.Condition : Phrase.Empty, FreshnessWords.Sentence(advice.Because), Next(advice, words));

    /// <summary>For how long, or what comes next, where the reason does not say it.</summary>
    public static Phrase Next(ProgramAdvice advice, SiteWords words) =>
        advice is { GrowInBegins: null, NamedDay: { } said } && said == (advice.After?.On ?? advice.LookAgain ?? advice.OffUntil) ? Phrase.Empty : Until(advice, words);

    /// <summary>What to look for at the box where the number is the one that the logbook has: an unanswered sheet asked for another, or to switch it off.</summary>
    public static Phrase Check(ProgramAdvice advice) =>
        advice is { Unanswered: not null, Present.IsOff: false, Advice: AdviceKind.Set or AdviceKind.Resume } && NewPercent(advice) == advice.Present.Percent && advice.Chain is not [{ Code: Reason.MayBeOff }, ..]
            ? $"Make sure it is on at {Number(advice, NewPercent(advice))}."
            : Phrase.Empty;

    /// <summary>For how long, or what comes next; empty where there is nothing to say.</summary>
    public static Phrase Until(ProgramAdvice advice, SiteWords words) => advice switch
    {
        { Advice: AdviceKind.Skip, PauseDays: { } days } => Pause(advice, words.SheetDate.AddDays(days), words),
        { Advice: AdviceKind.Skip or AdviceKind.KeepOff, GrowInBegins: { } first, LookAgain: { } day } when !(advice.PausedUntil <= first) =>
            $"Turn on again {SiteWords.Date(day)} for the grow-in that begins at {words.When(first)}.",
        { PausedUntil: { } until, Advice: AdviceKind.KeepOff } => $"Paused; runs by itself again from {words.When(until)} on.",
        { Advice: AdviceKind.Skip, LookAgain: { } day } => $"Turn on again {SiteWords.Date(day)}{(advice.After is { } after ? $" at about {Number(advice, after.Percent)}" : Phrase.Empty)} if no rain falls.",
        { Advice: AdviceKind.KeepOff, LookAgain: { } day } => $"Looked at again {words.Day(day)}.",
        { Advice: AdviceKind.Off, OffUntil: { } day, OffUntilClock: { } clock } => $"Must not run until {SiteWords.Clock(clock)} {SiteWords.Date(day)}.",
        { Advice: AdviceKind.Off, OffUntil: { } day } => $"Must not run through {SiteWords.Date(day)}.",
        { Advice: AdviceKind.Off } => new("Must not run until further notice."),
        { Advice: AdviceKind.Set or AdviceKind.Resume, After: { } next } => $"From {SiteWords.Date(next.On)} about {Number(advice, next.Percent)}.",
        _ => Phrase.Empty,
    };

    /// <summary>"60 %", of a box without a percentage "60 % of stations.csv".</summary>
    private static Phrase Number(ProgramAdvice advice, double percent) => $"{SiteWords.Percent(percent)}{(advice.MinutesOnly ? MinutesWords.OfBase : Phrase.Empty)}";

    private static Phrase Pause(ProgramAdvice advice, DateOnly back, SiteWords words)
    {
        var growIn = advice.GrowInBegins is { } first ? $" for the grow-in that begins at {words.When(first)}" : Phrase.Empty;
        var wanted = advice.After is { } after ? $"; wanted {(after.On == back ? new Phrase("then") : SiteWords.Date(after.On))} at about {Number(advice, after.Percent)} if no rain falls" : Phrase.Empty;
        return $"The box runs by itself again from {SiteWords.Date(back)}{growIn}{wanted}.";
    }

    /// <summary>What a number that cannot go higher leaves undone; empty where none does.</summary>
    public static Phrase CutOff(ProgramAdvice advice, SiteWords words) => AdviceSentences.NumberEnds(advice, words.Units);

    /// <summary>How a start is split; empty where the ground takes it in one piece.</summary>
    public static Phrase Split(ProgramAdvice advice) => AdviceSentences.SplitAndAfter(advice);

    public static Phrase Stop(StopRule rule, SiteWords words) => AdviceSentences.Stop(rule, words.Units, words.SiteClock, words.SheetDate);

    /// <summary>The same behind a program where little room is: "with 0.26 in at range before 22:15 today".</summary>
    public static Phrase StopShort(StopRule rule, SiteWords words)
    {
        var gauges = rule.AlsoAt.Count == 0 ? Phrase.Verbatim(rule.Gauge) : $"each of {Phrase.ListNames([rule.Gauge, .. rule.AlsoAt])}";
        return $"with {words.DepthOf(rule.RainMm)} at {gauges} before {words.When(rule.Before)}";
    }

    public static Phrase NewMinutes(StationMinutes minutes) =>
        $"station {minutes.Station.Station}: {Tables.Plain.Short(minutes.From)} → {SiteWords.Minutes(minutes.To)}";

    public static Phrase NotConfirmed(ProgramAdvice advice) => advice.MinutesOnly
        ? MinutesWords.NotConfirmed
        : new Phrase("Nobody has confirmed this setting; 100 % is taken until somebody reads the dial.");

    /// <summary>"Mon 8 June said: set 80 %. Nobody has answered. If it was done, today says: leave 80 %. If not: set 75 %."</summary>
    /// <param name="advice">A program of which an earlier sheet was not answered.</param>
    public static Phrase NotAnswered(ProgramAdvice advice)
    {
        var unanswered = advice.Unanswered!;
        var said = Said(unanswered.Kind, unanswered.Percent, advice.MinutesOnly, unanswered.PauseDays) + MinutesWords.Stations(unanswered.NewMinutes);
        var (done, not) = (Said(unanswered.IfDone, advice), Said(unanswered.AsLogged, advice));
        if (unanswered is { IfDone.Kind: AdviceKind.Off, AsLogged.Kind: AdviceKind.Off })
        {
            var asked = unanswered.Kind is AdviceKind.Skip or AdviceKind.Off ? new Phrase("Nobody has answered: was it switched off?") : new Phrase("Nobody has answered.");
            return $"{SiteWords.Date(unanswered.Sheet)} said: {said}. {asked} It must not run today, whatever was done.";
        }

        return $"{SiteWords.Date(unanswered.Sheet)} said: {said}. Nobody has answered. If it was done, today says: {done}. If not: {not}.{Meanwhile(advice)}";
    }

    /// <summary>What the round says until somebody answers, where one of the two ways says something else.</summary>
    private static Phrase Meanwhile(ProgramAdvice advice)
    {
        var unanswered = advice.Unanswered!;
        return advice switch
        {
            { Advice: AdviceKind.Set or AdviceKind.Resume, Percent: { } number } when number != unanswered.IfDone.Percent && number != unanswered.AsLogged.Percent =>
                $" The round says {Number(advice, number)}: until somebody answers, a number moves by no more than a step a day.",
            { Advice: AdviceKind.Set or AdviceKind.Resume, Percent: { } number } when number != unanswered.IfDone.Percent || number != unanswered.AsLogged.Percent =>
                $" Until somebody answers, the round says {Number(advice, number)}.",
            { Advice: AdviceKind.Skip } when unanswered.IfDone.Kind != AdviceKind.Skip || unanswered.AsLogged.Kind != AdviceKind.Skip =>
                $" Until somebody answers, the round says: {Said(advice.Advice, null, advice.MinutesOnly, advice.PauseDays)}.",
            _ => Phrase.Empty,
        };
    }

    private static Phrase Said(AlternativeAdvice way, ProgramAdvice advice) => Said(way.Kind, way.Percent, advice.MinutesOnly, way.PauseDays);

    /// <summary>The same, and what is noted of a program before somebody turns it on.</summary>
    public static Phrase NotAnsweredAndNoted(ProgramAdvice advice) => Phrase.Sentences(NotAnswered(advice), advice.Unanswered!.NotedBefore);

    /// <summary>An advice inside a sentence; of a box without a percentage a number is percent of the minutes in stations.csv.</summary>
    public static Phrase Said(AdviceKind kind, double? percent, bool minutesOnly, int? pauseDays = null)
    {
        Phrase number = $"{SiteWords.Percent(percent ?? 0)}{(minutesOnly ? MinutesWords.OfBase : Phrase.Empty)}";
        return kind switch
        {
            AdviceKind.Set => minutesOnly ? $"{MinutesWords.Set} {number}" : Phrase.Of($"set {number}"),
            AdviceKind.Resume => $"turn on at {number}",
            AdviceKind.Skip => pauseDays is { } days ? $"skip (pause {Phrase.Count(days, "day", "days")})" : new Phrase("skip (switch off)"),
            AdviceKind.Off => new("must not run (switch off)"),
            AdviceKind.Leave => percent is { } present ? minutesOnly ? Phrase.Of($"leave {MinutesWords.Its(present)}") : $"leave it at {number}" : new Phrase("leave"),
            AdviceKind.KeepOff => new("stays off"),
            _ => new("as set"),
        };
    }
}
