using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Core.Explain;

/// <summary>The rules in their order, down to the one that decided; and the number for the dial.</summary>
internal static class DecisionSteps
{
    public static Section Of(Judged judged, string title)
    {
        var decision = judged.Decision;
        List<ProgramCase> needs = [.. judged.Box.Where(c => c.Need is not null && (c.IsOwn || ReferenceEquals(c, judged.Case)))];
        List<Step> steps = [];
        if (needs.Count > 0 && decision.ExactPercent is { } exact)
        {
            Term[] all = [.. needs.Select((c, i) => new Term(FormattableString.Invariant($"exact{i + 1}"), c.Need!.ExactPercent))];
            steps.AddRange(needs.Zip(all, (c, term) => Step.Given($"{c.Program.Key} needs", term.Symbol, term.Value, "%", ReferenceEquals(c, judged.Case) ? "as above" : $"`explain {c.Program.Key}`")));
            steps.Add(Step.Of(
                needs.Count > 1 ? "programs that share a percentage: the largest" : "exact percentage", "exact", needs.Count > 1 ? $"max({string.Join(", ", all.Select(t => "{" + t.Symbol + "}"))})" : "{exact1}",
                exact, "%", "", all));
        }

        if (decision.Proposed is { } number)
        {
            steps.AddRange(Dial(judged, needs, decision.ExactPercent!.Value, number));
        }

        steps.AddRange(Rules(judged, needs));
        return new Section(title, steps);
    }

    /// <summary>The number for the dial, and what limits it.</summary>
    private static IEnumerable<Step> Dial(Judged judged, List<ProgramCase> needs, double exact, double number)
    {
        var controller = needs[0].Program.Controller;
        var nearest = DialNumber.Nearest(controller, exact);
        Term percent = new("exact", exact), step = new("step", controller.PercentStep);
        yield return Step.Of(
            OnDial(controller) + ", never 0", "dial", "min({largest}, max({smallest}, floor({exact} / {step} + 0.5) * {step}))", nearest, "%", "halves up",
            percent, step, new("largest", controller.PercentMax), new("smallest", Smallest(controller)));
        var raised = ShortRuns.Raise(needs, nearest);
        if (raised > nearest)
        {
            yield return Step.Given(FormattableString.Invariant($"raised: most of the ground would run less than {controller.LeastRunMinutes:0.##} min"), "dial", raised, "%", "controller");
        }

        if (number < raised)
        {
            var ceiling = needs.Select(c => Prohibitions.Ceiling(c.Context, c.Program, c.Horizon)).OfType<(double Percent, Sites.Restriction Rule)>().OrderBy(c => c.Percent).FirstOrDefault();
            yield return Step.Given(ceiling.Rule is not null && ceiling.Percent < raised ? $"cut to the ceiling of {ceiling.Rule.Name}" : "not raised: some of the rain is unknown", "dial", number, "%", "");
        }
    }

    /// <summary>Where a number has to lie.</summary>
    public static string OnDial(Sites.Controller controller) =>
        controller.Applies == Sites.PercentApplies.None ? "a step of its percentage of the minutes in stations.csv" : "on the dial";

    /// <summary>The smallest number that a dial may show.</summary>
    public static double Smallest(Sites.Controller controller) => controller.PercentMin > 0 ? controller.PercentMin : controller.PercentStep;

    private static IEnumerable<Step> Rules(Judged judged, List<ProgramCase> needs)
    {
        var (program, decision, report) = (judged.Case, judged.Decision, judged.Case.Context.Site.Report);
        var decided = PlaceOf(judged);
        var exact = decision.ExactPercent is { } e ? Step.Number(e) : "none";
        var canWait = needs.TrueForAll(c => c.Need!.CanWait);
        var due = needs.Exists(c => c.Need!.Due);
        (Rule Rule, string Words)[] rules =
        [
            (Rule.MustNotRun, "season closed, or an order over every start: off"),
            (Rule.IsFaulty, "off with a note of what is wrong: keep off"),
            (Rule.GrowsIn, "grow-in: leave"),
            (Rule.NoSoundAdvice, "weather too old or unknown: as set"),
            (Rule.NothingToDecide, $"no start before the next visit ({program.Horizon.Starts.Count} starts), or no visit day: leave"),
            (Rule.Restricted, "a watering rule over every start: off"),
            (Rule.Waits, FormattableString.Invariant($"can wait ({ZoneNeedSteps.Yes(canWait)}), and {exact} % is at most {report.SkipBelowPercent:0.##} % or it is not due (due: {ZoneNeedSteps.Yes(due)}){(report.SkipRoom is { } room ? FormattableString.Invariant($", and the present setting would not leave {100 * room:0.##} % of RAW empty") : "")}: skip")),
            (Rule.RainForecast, "can wait, and enough rain is forecast: skip"),
            (Rule.StaysOff, "off, can wait, and most of the ground would run too short: keep off"),
            (Rule.Resumes, "off or paused: resume"),
            (Rule.GoodEnough, "the present setting is good enough in every zone that is not set aside: leave"),
            (Rule.SameMinutes, "no station's minutes would change: leave"),
            (Rule.TooShort, "can wait, and most of the ground would run too short: skip"),
            (Rule.Sets, "else: set"),
        ];
        foreach (var (rule, words) in rules.TakeWhile(r => r.Rule <= decided))
        {
            yield return Step.Said(FormattableString.Invariant($"rule {(int)rule + 1}, {words}? {ZoneNeedSteps.Yes(rule == decided)}"));
        }

        if (decision.Cause == Cause.AssumedSoil)
        {
            yield return Step.Said("what follows would leave water out or cut it, and rests on how wet the ground was only assumed to be: leave");
        }
    }

    /// <summary>In the order in which they are asked.</summary>
    private enum Rule
    {
        MustNotRun,
        IsFaulty,
        GrowsIn,
        NoSoundAdvice,
        NothingToDecide,
        Restricted,
        Waits,
        RainForecast,
        StaysOff,
        Resumes,
        GoodEnough,
        SameMinutes,
        TooShort,
        Sets,
    }

    /// <summary>The rule that decided; of a decision that rests on assumed soil the last before those it takes the place of.</summary>
    private static Rule PlaceOf(Judged judged) => judged.Decision switch
    {
        { Cause: Cause.MustNotRun } => Prohibitions.SeasonOrOrder(judged.Case.Context, judged.Case.Program, judged.Case.Horizon) is not null ? Rule.MustNotRun : Rule.Restricted,
        { Cause: Cause.GrowsIn or Cause.GrowInBegins } => Rule.GrowsIn,
        { Cause: Cause.IsFaulty } => Rule.IsFaulty,
        { Cause: Cause.NoSoundAdvice } => Rule.NoSoundAdvice,
        { Cause: Cause.NoStart or Cause.NoVisit } => Rule.NothingToDecide,
        { Cause: Cause.AssumedSoil } => (Rule)(-1),
        { Cause: Cause.CanWait or Cause.NotDue } => Rule.Waits,
        { Cause: Cause.RainForecast } => Rule.RainForecast,
        { Cause: Cause.RunsTooShort, Advice: AdviceKind.KeepOff } => Rule.StaysOff,
        { Cause: Cause.RunsTooShort } => Rule.TooShort,
        { Advice: AdviceKind.Resume } => Rule.Resumes,
        { IsGoodEnough: true } => Rule.GoodEnough,
        { Advice: AdviceKind.Leave } => Rule.SameMinutes,
        _ => Rule.Sets,
    };
}
