using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Sentences that stand both with a change and in the chain behind it.</summary>
public static class AdviceSentences
{
    /// <summary>When to switch a program off after rain.</summary>
    /// <param name="rule">Gauges and depth.</param>
    /// <param name="units">The site's.</param>
    /// <param name="clock">The site's.</param>
    /// <param name="today">The sheet's date.</param>
    public static Phrase Stop(StopRule rule, UnitSystem units, SiteClock clock, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(rule);
        var gauges = rule.AlsoAt.Count == 0 ? Phrase.Of($"gauge {rule.Gauge} shows") : $"gauges {Phrase.ListNames([rule.Gauge, .. rule.AlsoAt])} each show";
        return $"Switch it off if {gauges} {DepthWords.Of(units, rule.RainMm)} or more before {TimeWords.When(clock, today, rule.Before)}.";
    }

    /// <summary>Why no larger number fits: a clause behind "because".</summary>
    /// <param name="cause">What it would run into; null = nobody can tell which of the two.</param>
    /// <param name="clock">The site's.</param>
    /// <param name="today">The sheet's date.</param>
    public static Phrase NoMore(CutCause? cause, SiteClock clock, DateOnly today) => cause switch
    {
        { WindowCloses: { } closes, PumpFrom: { } from } => $"the watering window closes at {TimeWords.When(clock, today, closes)} and the pump gives no more from {TimeWords.When(clock, today, from)}",
        { WindowCloses: { } closes } => $"the watering window closes at {TimeWords.When(clock, today, closes)}",
        { PumpFrom: { } from } => $"the pump gives no more from {TimeWords.When(clock, today, from)}",
        _ => new("the night or the pump does not give more"),
    };

    /// <summary>What is noted of a program that is turned on.</summary>
    /// <param name="fault">The note.</param>
    /// <param name="clock">The site's.</param>
    public static Phrase OnlyIfMended(Fault fault, SiteClock clock)
    {
        ArgumentNullException.ThrowIfNull(fault);
        return FaultWords.BeforeTurningOn(fault, clock);
    }

    /// <summary>What is to be done first at a box that is paused.</summary>
    /// <param name="until">When the pause would end, UTC.</param>
    /// <param name="clock">The site's.</param>
    public static Phrase EndPause(DateTimeOffset until, SiteClock clock) => $"The box is paused until {Words.DateAndTime(clock, until)}: end the pause.";

    /// <summary>How a start is split, and whether that has to be put back.</summary>
    public static Phrase SplitAndAfter(ProgramAdvice advice)
    {
        var split = Split(advice);
        return advice.InPlace is { NextOwnMinutes: null } ? Phrase.Sentences(split, new("It may stay so: the water of a night is the same.")) : split;
    }

    /// <summary>How a start is split that brings more than the ground takes in one piece; empty where none does.</summary>
    public static Phrase Split(ProgramAdvice advice)
    {
        ArgumentNullException.ThrowIfNull(advice);
        if (advice.InPlace is not { } split)
        {
            return Phrase.Empty;
        }

        var longest = advice.LongRuns.MaxBy(r => r.Split.Cycles);
        var more = advice.LongRuns.Count > 1 ? $" and {advice.LongRuns.Count - 1} more" : Phrase.Empty;
        var at = longest is null ? Phrase.Empty : $" at {longest.Name}{more}";
        Phrase share = $"1/{split.Starts} of {(advice.MinutesOnly ? new Phrase("the new minutes") : new Phrase("the base minutes"))}{Runs(advice, split)}";
        return split.NextOwnMinutes is not { } next
            ? Phrase.Of($"More than the ground takes at once{at}: in place of each start key in {split.Starts}, {Words.Minutes(split.ApartMinutes)} from the beginning of one to that of the next, each with {share}.")
            : $"More than the ground takes at once{at}: in place of each start it would take {split.Starts}, {Words.Minutes(split.ApartMinutes)} from the beginning of one to that of the next, but its own next start comes after {Words.Minutes(next)}. {(split.ThatFit == 1
                ? Phrase.Of($"Only the first fits, with {share}; what the others would bring")
                : $"Key in {split.ThatFit}, each with {share}; the rest")} cannot enter the ground: lower the rate, or split the water over more nights.";
    }

    /// <summary>What a number that cannot go higher leaves undone; empty where none does.</summary>
    /// <param name="advice">The program.</param>
    /// <param name="units">The site's.</param>
    public static Phrase NumberEnds(ProgramAdvice advice, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(advice);
        if (advice is not { Shortfall: { DialEnds: true } cut, Percent: { } percent })
        {
            return Phrase.Empty;
        }

        var ends = advice.MinutesOnly ? Phrase.Of($"No more than {Words.Percent(percent)} of the minutes in stations.csv is advised") : $"The dial ends at {Words.Percent(percent)}";
        var needed = advice.ExactPercent is { } exact && exact > percent ? $", {Words.Percent(Math.Round(exact))} is needed" : Phrase.Empty;
        return $"{ends}{needed}: {DepthWords.Of(units, cut.DepthMm)} or {Words.Minutes(Math.Round(cut.Minutes, 1))} short a start.";
    }

    /// <summary>" (the longest then runs 28 min at 140 %)".</summary>
    private static Phrase Runs(ProgramAdvice advice, StartsInPlace split) => advice.LongRuns.Count == 0 ? Phrase.Empty
        : advice.MinutesOnly ? Phrase.Of($" (the longest then runs {Words.Minutes(Math.Round(advice.LongRuns.Max(r => r.Minutes) / split.Starts, 1))})")
        : Phrase.Of($" (the longest then runs {Words.Minutes(Math.Round(advice.LongRuns.Max(r => r.Minutes) / split.Starts, 1))} at {Words.Percent(advice.Percent ?? advice.Present.Percent)})");
}
