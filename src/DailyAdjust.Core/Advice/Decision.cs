using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Advice;

/// <summary>What is decided for one program, or for all programs of a box with one percentage.</summary>
/// <param name="Advice">The advice.</param>
/// <param name="Percent">set and resume: the number.</param>
/// <param name="ExactPercent">Before rounding; null where none was computed.</param>
/// <param name="Cause">What decided, for the words.</param>
/// <param name="Prohibition">off: why and until when.</param>
/// <param name="RainAhead">skip that rests on a forecast: the rain.</param>
/// <param name="Cut">The number was cut to fit the night.</param>
internal sealed record Decision(
    AdviceKind Advice, double? Percent, double? ExactPercent, Cause Cause, Prohibition? Prohibition = null, RainAhead? RainAhead = null, NightCut? Cut = null)
{
    /// <summary>The number that the present setting was held against; null where none was.</summary>
    public double? Proposed { get; init; }

    /// <summary>Nobody answered an earlier sheet, and this rests on its having been done.</summary>
    public bool IsIfDone { get; init; }

    /// <summary>The present setting is left because it is good enough beside the number proposed.</summary>
    public bool IsGoodEnough { get; init; }
}

/// <summary>The rule that decided.</summary>
internal enum Cause
{
    MustNotRun,
    NoSoundAdvice,
    NoStart,
    NoVisit,
    CanWait,
    NotDue,
    RunsTooShort,
    RaisedToRun,
    RainForecast,
    WasOff,
    GoodEnough,
    SameMinutes,
    CeilingHolds,
    UnknownRain,
    AssumedSoil,
    MayHaveBeenTurnedOff,
    AskedAgain,
    StaysNear,
    NoMoreEitherWay,
    IsFaulty,
    GrowsIn,
    GrowInBegins,
    NightTooShort,
    Need,
}

/// <summary>What nobody knows and a program may rest on.</summary>
/// <param name="UnknownRain">Rain of past days in its ground: then nothing is raised.</param>
/// <param name="AssumedSoil">How wet its ground was at the beginning: then nothing is left out or cut.</param>
internal sealed record Doubts(Func<ProgramCase, bool> UnknownRain, Func<ProgramCase, bool> AssumedSoil);

/// <summary>Finds the advice: the first rule that applies.</summary>
internal static class DecisionRules
{
    /// <param name="context">The morning.</param>
    /// <param name="program">The program. Season, orders and being off are its own.</param>
    /// <param name="box">All programs that share its percentage: itself, or every program of its controller.</param>
    /// <param name="noSoundAdvice">Weather too old, no expected ETo or an open day.</param>
    /// <param name="doubts">What a program may rest on and nobody knows.</param>
    public static Decision Decide(AdviceContext context, ProgramCase program, IReadOnlyList<ProgramCase> box, bool noSoundAdvice, Doubts doubts)
    {
        var needs = box.Where(c => c.Need is not null && (c.IsOwn || ReferenceEquals(c, program))).ToList();
        double? exact = needs.Count > 0 ? needs.Max(c => c.Need!.ExactPercent) : null;
        if (Prohibitions.SeasonOrOrder(context, program.Program, program.Horizon) is { } prohibited)
        {
            return new Decision(AdviceKind.Off, null, exact, Cause.MustNotRun, prohibited);
        }

        var isOff = program.Present.Setting.IsOff;
        if (program.Fault is not null)
        {
            return new Decision(AdviceKind.KeepOff, null, exact, Cause.IsFaulty);
        }

        if (program.GrowIn is not null)
        {
            var cause = program.GrowInBegins is null ? Cause.GrowsIn : Cause.GrowInBegins;
            if (!isOff)
            {
                return new Decision(AdviceKind.Leave, null, null, cause);
            }

            // Whoever ordered it after it was turned off wants it on, and so does whoever noted that it is mended; what has not begun nobody has stopped.
            return cause == Cause.GrowsIn && program.Noted is null && context.GrowIns.IsStopped(program.GrowIn, context.Settings, context.RoundDone)
                ? new Decision(AdviceKind.KeepOff, null, null, cause)
                : new Decision(AdviceKind.Resume, context.Settings.LastRunning(program.Program.Key, context.AsOf).Percent, null, cause);
        }

        if (noSoundAdvice)
        {
            return new Decision(AdviceKind.AsSet, null, null, Cause.NoSoundAdvice);
        }

        if (needs.Count == 0)
        {
            return new Decision(isOff ? AdviceKind.KeepOff : AdviceKind.Leave, null, null, program.IsVisit ? Cause.NoStart : Cause.NoVisit);
        }

        if (program.Need is not null && Prohibitions.Restricted(context, program.Program, program.Horizon) is { } restricted)
        {
            return new Decision(AdviceKind.Off, null, exact, Cause.MustNotRun, restricted);
        }

        var decision = OfNeeds(context, needs, isOff, exact!.Value, needs.Exists(c => doubts.UnknownRain(c)));
        return Cuts(needs, decision) && !isOff && !OverCeiling(context, needs) && needs.Exists(c => doubts.AssumedSoil(c))
            ? new Decision(AdviceKind.Leave, null, exact, Cause.AssumedSoil)
            : decision;
    }

    private static bool Cuts(List<ProgramCase> needs, Decision decision) =>
        decision.Advice == AdviceKind.Skip || (decision.Advice == AdviceKind.Set && needs.Exists(c => decision.Percent < c.Present.Setting.Percent));

    internal static bool OverCeiling(AdviceContext context, List<ProgramCase> needs) => needs.Exists(c =>
        !c.Present.Setting.IsOff && Prohibitions.Ceiling(context, c.Program, c.Horizon) is { } ceiling && c.Present.Setting.Percent > ceiling.Percent);

    private static Decision OfNeeds(AdviceContext context, List<ProgramCase> needs, bool isOff, double exact, bool unknownRain)
    {
        var policy = context.Site.Report;
        var canWait = needs.TrueForAll(c => c.Need!.CanWait);
        var due = needs.Exists(c => c.Need!.Due);
        if (canWait && (exact <= policy.SkipBelowPercent || !due) && (isOff || !GoodEnough.LeavesRoom(needs, policy.SkipRoom)))
        {
            return new Decision(isOff ? AdviceKind.KeepOff : AdviceKind.Skip, null, exact, exact <= policy.SkipBelowPercent ? Cause.CanWait : Cause.NotDue);
        }

        if (canWait && needs.TrueForAll(c => ForecastRainRule.LetsSkip(context, c) is not null))
        {
            return new Decision(isOff ? AdviceKind.KeepOff : AdviceKind.Skip, null, exact, Cause.RainForecast, RainAhead: ForecastRainRule.LetsSkip(context, needs[0]));
        }

        var tooShort = canWait && ShortRuns.OnMostGround(needs, DialNumber.Nearest(needs[0].Program.Controller, exact));
        if (isOff && tooShort)
        {
            return new Decision(AdviceKind.KeepOff, null, exact, Cause.RunsTooShort);
        }

        var (number, cause, wanted) = Number(context, needs, exact, unknownRain);
        if (isOff || needs.Exists(c => c.FirstIsPaused))
        {
            return new Decision(AdviceKind.Resume, number, exact, cause == Cause.Need ? Cause.WasOff : cause) { Proposed = number };
        }

        var running = needs.Where(c => !c.Present.Setting.IsOff).ToList();
        if (!OverCeiling(context, needs) && !(tooShort && ShortRuns.OnMostGround(running, c => c.Present.Setting.Percent)))
        {
            bool PresentDoesAsWellAs(double other) => running.TrueForAll(c => GoodEnough.Holds(c.Program, c.Need!, c.Present.Setting.Percent, other, policy.Worth));
            if (PresentDoesAsWellAs(number))
            {
                // What holds the number down is the reason where without it the walk would be worth it.
                return new Decision(AdviceKind.Leave, null, exact, number < wanted && !PresentDoesAsWellAs(wanted) ? cause : Cause.GoodEnough) { Proposed = number, IsGoodEnough = true };
            }

            if (running.TrueForAll(c => GoodEnough.SameMinutes(c.Program, c.Need!, c.Present.Setting.Percent, number)))
            {
                return new Decision(AdviceKind.Leave, null, exact, cause is Cause.Need ? Cause.SameMinutes : cause) { Proposed = number };
            }
        }

        // Only a number that is to be set can be too short: what runs well enough is not left out for it.
        if (tooShort)
        {
            return new Decision(AdviceKind.Skip, null, exact, Cause.RunsTooShort) { Proposed = number };
        }

        return new Decision(AdviceKind.Set, number, exact, cause) { Proposed = number };
    }

    /// <summary>The number for the dial, what limited it, and what it would be without that.</summary>
    private static (double Number, Cause Cause, double Wanted) Number(AdviceContext context, List<ProgramCase> needs, double exact, bool unknownRain)
    {
        var controller = needs[0].Program.Controller;
        var nearest = DialNumber.Nearest(controller, exact);
        var wanted = ShortRuns.Raise(needs, nearest);
        var number = wanted;
        var cause = number > nearest ? Cause.RaisedToRun : Cause.Need;
        if (unknownRain)
        {
            // Rain that nobody knows never raises a percentage above its setting.
            var most = needs.Max(c => (c.Present.Setting.IsOff ? context.Settings.LastRunning(c.Program.Key, context.AsOf) : c.Present.Setting).Percent);
            if (number > most)
            {
                (number, cause) = (most, Cause.UnknownRain);
            }
        }

        foreach (var c in needs)
        {
            if (Prohibitions.Ceiling(context, c.Program, c.Horizon) is { } ceiling && number > ceiling.Percent)
            {
                (number, cause) = (DialNumber.AtMost(controller, ceiling.Percent), Cause.CeilingHolds);
            }
        }

        return (number, cause, wanted);
    }
}
