using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Advice;

/// <summary>The chain of reasons behind one program's advice, in words and as data; its first link is the sheet's one sentence.</summary>
internal sealed class ReasonWriter(AdviceContext context, IReadOnlyList<RecentRain> recentRain, Phrase? noAdvice)
{
    private readonly FurtherReasons _further = new(context);

    private UnitSystem Units => context.Site.Units;

    /// <summary>Its first link goes without <see cref="Condition"/>.</summary>
    public IReadOnlyList<Reason> Of(Judged judged, Decision decision, ProgramAdvice advice)
    {
        var program = judged.Case;
        var main = Main(program, decision, advice, NeedWords(program, judged.Leader));
        return [main with { Words = Phrase.Sentences([main.Words, .. Barred(program, decision)]) }, .. _further.Of(program, decision, advice)];
    }

    /// <summary>The date that the first link of the chain says it holds until, or is judged again on; null = it says none.</summary>
    public static DateOnly? NamedDay(Decision decision, ProgramAdvice advice) => decision.Cause switch
    {
        Cause.MustNotRun => advice.OffUntil,
        Cause.NoStart or Cause.NoVisit or Cause.RainForecast when advice.GrowInBegins is null => advice.LookAgain,
        _ => null,
    };

    /// <summary>The first link beside an act that says already what is to be done.</summary>
    public static Phrase Because(Decision decision, Reason first) => decision is { Cause: Cause.MustNotRun, Prohibition: { } prohibition }
        ? $"{prohibition.Why.Shaped(Capital)}{Until(prohibition)}."
        : first.Words;

    /// <summary>What is noted of a program that is turned on, or that may be on because a sheet said so and nobody answered; and that a dial cannot be off for one program and on for the next.</summary>
    public Phrase Condition(ProgramCase program, Decision decision) => (program.Noted, decision) switch
    {
        ({ } fault, { Advice: AdviceKind.Resume }) => FaultWords.BeforeTurningOn(fault, context.Site.Clock),
        ({ Answer: null } fault, { Advice: AdviceKind.Skip }) => $"{FaultWords.OffSince(fault, context.Site.Clock)}.",
        (_, { Cause: Cause.MustNotRun }) => OneDialWords(program.Program.Controller),
        _ => Phrase.Empty,
    };

    /// <summary>Ground that was no part of a decision to leave water out, since it must not run in any case.</summary>
    private IEnumerable<Phrase> Barred(ProgramCase program, Decision decision)
    {
        if (program.Need is null || decision.Advice is not (AdviceKind.Skip or AdviceKind.KeepOff) || decision.Cause == Cause.IsFaulty)
        {
            return [];
        }

        var judged = OrderHits.ZonesThatRun(context, program.Program, program.Horizon).Select(z => z.Station.Key).ToHashSet();
        return OrderHits.Stations(context, program.Program, program.Horizon)
            .Select(o => (Stations: o.Stations.Where(s => !judged.Contains(s)).Select(s => Phrase.Verbatim(s.ToString())).ToList(), o.Why))
            .Where(o => o.Stations.Count > 0)
            .Select(o => o.Stations.Count == 1
                ? Phrase.Of($"{o.Stations[0]} must not run and was not asked ({o.Why}).")
                : $"{Words.List([.. o.Stations], most: 12)} must not run and were not asked ({o.Why}).");
    }

    private Reason Main(ProgramCase program, Decision decision, ProgramAdvice advice, Phrase needWords) => decision.Cause switch
    {
        Cause.MustNotRun => Reason.Plain("must-not-run", $"Must not run: {decision.Prohibition!.Why}{Until(decision.Prohibition)}."),
        Cause.NoSoundAdvice => Reason.Plain("no-sound-advice", $"No sound advice: {noAdvice!}. Leave it as it is set."),
        Cause.IsFaulty => Reason.Plain("fault", $"{FaultWords.OffSince(program.Fault!, context.Site.Clock)}: is that mended or over? A setting in the logbook, or the entry {Reason.Checked} for box {program.Program.Key.Controller}, hands it back to {(program.GrowIn is null ? new Phrase("the numbers") : new Phrase("its grow-in"))}."),
        Cause.GrowsIn when advice is { Advice: AdviceKind.KeepOff, PausedUntil: null } => Reason.Plain("grow-in", $"Grow-in through {Words.Date(program.GrowIn!.Last)}, but it was turned off since its order: a setting above 0 takes it up again."),
        Cause.GrowsIn => Reason.Plain("grow-in", $"Grow-in through {Words.Date(program.GrowIn!.Last)}: its starts and minutes are keyed by hand{(advice.Present.IsOff ? Phrase.Empty : new Phrase(", the percentage stays"))}."),
        Cause.GrowInBegins => Reason.Plain("grow-in-begins", Phrase.Sentences($"A grow-in begins {Words.When(context.Site.Clock, context.Date, advice.GrowInBegins!.Value)}: its starts and minutes are keyed by hand{(advice.Present.IsOff ? Phrase.Empty : new Phrase(", the percentage stays"))}.", PausedWords(advice))),
        Cause.NoStart when advice is { LookAgain: { } day, GrowInBegins: null } => Reason.Plain(
            "no-start", advice.Present.IsOff ? Phrase.Of($"Off; no start before the next visit; judged on {Words.Date(day)}.") : $"No start before the next visit; judged on {Words.Date(day)}."),
        Cause.NoStart => Reason.Plain("no-start", new("No start before the next visit.")),
        Cause.NoVisit when advice is { LookAgain: { } day, GrowInBegins: null } => Reason.Plain("no-visit", $"No visit today; judged on {Words.Date(day)}."),
        Cause.NoVisit => Reason.Plain("no-visit", new("No visit today.")),
        Cause.CanWait or Cause.NotDue => Waits(program, decision),
        Cause.RunsTooShort => Reason.With("runs-too-short", $"At {Words.Percent(Math.Round(decision.ExactPercent!.Value))} most of the ground would run less than {Words.Minutes(program.Program.Controller.LeastRunMinutes)}, and it can wait.", NeedData(program)),
        Cause.RaisedToRun => Reason.With("raised-to-run", $"{Words.Percent(Math.Round(decision.ExactPercent!.Value))} would do, but most of the ground would run less than {Words.Minutes(program.Program.Controller.LeastRunMinutes)}: raised.", NeedData(program)),
        Cause.RainForecast => RestsOnForecast(program, decision.RainAhead!, advice),
        Cause.WasOff when program.Present.PausedUntil is { } ends => Reason.With(
            "was-off", $"It is paused until {Words.DateAndTime(context.Site.Clock, ends)} and its ground needs water before then: end the pause{needWords}.", NeedData(program)),
        Cause.WasOff => Reason.With("was-off", $"It is off and its ground now needs water{needWords}.", NeedData(program)),
        Cause.GoodEnough => Reason.With("good-enough", GoodEnoughWords(program, advice, decision.ExactPercent!.Value), NeedData(program)),
        Cause.SameMinutes => Reason.With("same-minutes", $"No station's minutes would change at {Words.Percent(decision.ExactPercent!.Value)}.", NeedData(program)),
        Cause.UnknownRain => Reason.With("unknown-rain", UnknownRainWords(advice), NeedData(program)),
        Cause.AssumedSoil => Reason.With("assumed-soil", $"How wet this ground is was only assumed, so nothing is cut or left out on that ({Words.Percent(Math.Round(decision.ExactPercent!.Value))} would do): probe it.", NeedData(program)),
        Cause.NightTooShort => Reason.With("night-too-short", CutWords(decision.Cut!, advice), NeedData(program)),
        Cause.CeilingHolds => Reason.With("ceiling", $"A watering rule allows {Words.Percent(decision.Percent ?? advice.Present.Percent)} at most; the need is {Words.Percent(decision.ExactPercent!.Value)}.", NeedData(program)),
        Cause.MayHaveBeenTurnedOff when program.Noted is { Answer: null } => Reason.Plain(Reason.MayBeOff, $"An earlier sheet asked too and nobody answered: if it is on already, set this number.{HeldBackWords(program, decision)}"),
        Cause.MayHaveBeenTurnedOff => Reason.Plain(Reason.MayBeOff, $"An earlier sheet said to leave it out or to turn it on, and nobody answered: make sure it is on at this number.{HeldBackWords(program, decision)}"),
        Cause.AskedAgain => Reason.With("asked-again", advice.MinutesOnly
            ? Phrase.Of($"An earlier sheet asked for these minutes and nobody answered; if they are keyed in, leave them.")
            : $"An earlier sheet asked for this number and nobody answered; if it is on the dial, leave it.", NeedData(program)),
        Cause.NoMoreEitherWay => Reason.With("no-more-either-way", $"An earlier sheet's number was not answered; so this one moves from it by no more than a step a day; neither way needs more than {Words.Percent(decision.Percent!.Value)}.", NeedData(program)),
        Cause.StaysNear => Reason.With("stays-near", StaysNearWords(Needed(program, decision), decision.IsIfDone), NeedData(program)),
        _ => Reason.With("need", $"{NeedDirection(decision, advice)}{needWords}.", NeedData(program)),
    };

    private Reason Waits(ProgramCase program, Decision decision)
    {
        var rain = RainOf(program);
        var because = decision.Cause == Cause.NotDue ? new Phrase("Not due yet") : rain is { } r ? $"{Words.Depth(Units, r.Mm)} of rain since {Words.Date(r.Since)} (gauge {r.Gauge})" : new Phrase("The ground holds enough");
        var data = NeedData(program);
        if (rain is { } fallen)
        {
            data["rainMm"] = fallen.Mm;
        }

        return Reason.With(decision.Cause == Cause.NotDue ? "not-due" : "can-wait", $"{because}: the ground can wait without this water.", data);
    }

    private Reason RestsOnForecast(ProgramCase program, RainAhead rain, ProgramAdvice advice)
    {
        var data = NeedData(program);
        data["forecastRainMm"] = rain.Mm!.Value;
        data["forecastChancePercent"] = rain.ChancePercent!.Value;
        var after = advice.After is { } number ? $" at about {Words.Percent(number.Percent)}" : Phrase.Empty;
        var otherwise = advice.GrowInBegins is not null ? Phrase.Empty : advice.LookAgain is { } day
            ? $"If it does not rain, turn it on again {Words.Date(day)}{after}."
            : new Phrase("If it does not rain, the next sheets say when to turn it on again.");
        return Reason.With(
            "rain-forecast",
            Phrase.Sentences($"Rests on a forecast: {Words.Depth(Units, rain.Mm.Value)} of rain on {Words.Date(context.Site.Clock.DateOf(rain.Begin))}, chance {Words.Percent(Math.Round(rain.ChancePercent.Value))}, and the ground can wait without this water.", otherwise),
            data);
    }

    private Phrase PausedWords(ProgramAdvice advice) => advice is { Advice: AdviceKind.Resume, PausedUntil: { } ends }
        ? AdviceSentences.EndPause(ends, context.Site.Clock)
        : Phrase.Empty;

    private Phrase CutWords(NightCut cut, ProgramAdvice advice)
    {
        var because = AdviceSentences.NoMore(cut.Cause, context.Site.Clock, context.Date);
        var missing = advice.Shortfall is { } gone ? $"; {Words.Depth(Units, gone.DepthMm)} or {Words.Minutes(gone.Minutes)} short a start" : Phrase.Empty;
        var other = cut.StartThatFits is not { } start ? Phrase.Empty
            : cut.HoldsWithOthers ? Phrase.Of($" With a first start at {start:HH:mm}, beside the other starts proposed, the whole would fit.")
            : $" With a first start at {start:HH:mm} the whole would fit.";
        return cut.ToPercent > 0
            ? Phrase.Of($"Cut from {Words.Percent(cut.FromPercent)}, because {because}{missing}.{other}")
            : $"Stays off, though its ground asks for {Words.Percent(cut.FromPercent)}, because {because}{missing}.{other}";
    }

    private static Phrase OneDialWords(Controller controller) => controller.Applies == PercentApplies.Controller && controller.Programs.Count > 1
        ? new("One dial serves the whole box: where its other programs run, leave the dial and take this program's starts out.")
        : Phrase.Empty;

    private static Phrase UnknownRainWords(ProgramAdvice advice) => advice.Present.IsOff
        ? $"Its ground needs water. Some of the rain is unknown, so it is turned on at no more than it last ran at, {Words.Percent(advice.Percent!.Value)}: enter the gauge."
        : new Phrase("Some of the rain is unknown, so nothing is raised above its setting: enter the gauge.");

    private static Phrase GoodEnoughWords(ProgramCase program, ProgramAdvice advice, double exact)
    {
        var (present, wanted) = (Words.Percent(advice.Present.Percent), Words.Percent(Math.Round(exact)));
        if (exact <= advice.Present.Percent)
        {
            return $"{present} wastes too little to be worth a walk; {wanted} would do.";
        }

        if (advice.Present.Percent >= program.Program.Controller.PercentMax)
        {
            return $"{(advice.MinutesOnly ? new Phrase("It runs as long as is ever advised") : new Phrase("The dial is at its end"))}; {wanted} was wanted: take hose and probe to the ground that stays past the allowable.";
        }

        return advice.Zones.Any(z => z.ShortMm > 0 && !z.SetAside)
            ? Phrase.Of($"A larger number would gain too little to be worth a walk, though {wanted} was wanted.")
            : $"{present} keeps the ground within its allowable depletion; filling it up would take {wanted}.";
    }

    private static Phrase NeedDirection(Decision decision, ProgramAdvice advice) =>
        new(decision.Percent < advice.Present.Percent ? "Part of the present water would drain" : "The present water is not enough");

    /// <summary>How dry the neediest ground gets by a later start with the present water, where that is what makes it too little.</summary>
    private Phrase LaterWords(ProgramCase program, ZoneNeed leading)
    {
        var allowable = leading.Zone.AllowableMm;
        if (leading.Forecast.BeforeFirstMm > allowable)
        {
            return Phrase.Empty;
        }

        var later = leading.Forecast.Run(GoodEnough.WaterOf(program.Program, leading.Forecast, program.Present.Setting.Percent)).WorstLaterMm;
        return later > allowable ? $", and with the present water {Words.Depth(Units, later)} before a later start" : Phrase.Empty;
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>On one dial the number is that of the program that needs most, whichever it is.</summary>
    private Phrase NeedWords(ProgramCase program, ProgramCase? leader)
    {
        var asks = leader ?? program;
        var leading = Leading(asks);
        var on = ReferenceEquals(asks, program) ? Phrase.Empty : $" ({asks.Program.Key.Program}, on the same dial)";
        return leading is null
            ? Phrase.Empty
            : $": {leading.Zone.Station.Label}{on} will be {Words.Depth(Units, leading.Forecast.BeforeFirstMm)} below full by {Words.DateAndTime(context.Site.Clock, asks.Horizon.Starts[0].At)}{LaterWords(asks, leading)}, allowable {Words.Depth(Units, leading.Zone.AllowableMm)}";
    }

    /// <summary>The neediest zone that the number was made for.</summary>
    private static ZoneNeed? Leading(ProgramCase program) =>
        program.Need?.Zones.Where(z => !program.Need.SetAside.Contains(z) && z.Percent <= program.Need.ExactPercent).MaxBy(z => z.Percent);

    private SortedDictionary<string, double> NeedData(ProgramCase program)
    {
        var data = new SortedDictionary<string, double>(StringComparer.Ordinal);
        if (program.Need is { } need)
        {
            data["exactPercent"] = need.ExactPercent;
            data["expectedEtoMm"] = context.ExpectedEtoMm(context.Date);
            data["startsInHorizon"] = program.Horizon.Starts.Count;
        }

        return data;
    }

    private RecentRain? RainOf(ProgramCase program)
    {
        var gauges = context.ZonesOf(program.Program).Select(z => z.Station.Gauge).ToHashSet(StringComparer.Ordinal);
        return recentRain.Where(r => gauges.Contains(r.Gauge)).OrderByDescending(r => r.Mm).Cast<RecentRain?>().FirstOrDefault();
    }

    /// <summary>What is wanted where an unanswered sheet keeps a program that is turned on near the number before.</summary>
    private static Phrase HeldBackWords(ProgramCase program, Decision decision) => decision.Percent < decision.Proposed
        ? $" This number moves from the one before by no more than a step a day; {Needed(program, decision)} if it is off."
        : Phrase.Empty;

    private static Phrase StaysNearWords(Phrase needed, bool ifDone) => ifDone
        ? Phrase.Of($"An earlier sheet's number was not answered, so this one moves from it by no more than a step a day; {needed} if it was done.")
        : $"An earlier sheet's number was not answered, so this one moves from it by no more than a step a day; {needed} if it was not done.";

    /// <summary>"170 % is needed": the number for the dial that an unanswered sheet keeps from it.</summary>
    private static Phrase Needed(ProgramCase program, Decision decision)
    {
        var exact = decision.ExactPercent!.Value;
        var (number, controller) = (decision.Proposed ?? Math.Round(exact), program.Program.Controller);
        return exact <= controller.PercentMax ? Phrase.Of($"{Words.Percent(number)} is needed")
            : controller.Applies == PercentApplies.None ? Phrase.Of($"{Words.Percent(number)} is needed, the most that is ever advised of {Words.Percent(Math.Round(exact))}")
            : $"{Words.Percent(number)} is needed, the most that the dial gives of {Words.Percent(Math.Round(exact))}";
    }

    private static Phrase Until(Prohibition prohibition) => prohibition switch
    {
        { Again: { } next, Until: { } last } => $", through {Words.Date(last)}; its next start that may run is on {Words.Date(next)}",
        { Until: { } date, UntilClock: { } clock } => $", until {clock:HH:mm} {Words.Date(date)}",
        { Until: { } date } => $", through {Words.Date(date)}",
        _ => Phrase.Empty,
    };
}

/// <summary>Rain of the last days at a gauge, worth naming.</summary>
internal readonly record struct RecentRain(string Gauge, DateOnly Since, double Mm);
