using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>A change of the round where there is little room: what the hand does and on what condition is never left out, why is.</summary>
internal static class RoundActWords
{
    /// <summary>What changes what the hand does, beside the numbers; mostly empty.</summary>
    public static Phrase Condition(ProgramAdvice advice) =>
        Phrase.Sentences(AdviceWords.Check(advice), advice.Advice == AdviceKind.Off ? Phrase.Empty : advice.Condition);

    /// <summary>All that the hand does beside turning the dial, without why; minutes stand in a table of their own.</summary>
    public static Phrase Beside(ProgramAdvice advice) => Phrase.Sentences(Condition(advice), AdviceWords.Split(advice));

    /// <summary>Why, for how long, and what comes next.</summary>
    public static Phrase Because(ProgramAdvice advice, SiteWords words) =>
        Phrase.Sentences(AdviceWords.CutOff(advice, words), FreshnessWords.Sentence(advice.Because), AdviceWords.Next(advice, words));

    /// <summary>"90 → 60 %", "SKIP, 110 % → off", "TURN ON, off → 75 % (only if mended or over)".</summary>
    public static Phrase Short(ProgramAdvice advice)
    {
        var act = advice is { Advice: AdviceKind.Set, MinutesOnly: false } ? $"{AdviceWords.Old(advice)} → {AdviceWords.New(advice)}" : AdviceWords.ActAndNumbers(advice);
        return act + IfMended(advice) + SplitShort(advice);
    }

    /// <summary>" (only if mended or over)", where a program with a note is turned on.</summary>
    public static Phrase IfMended(ProgramAdvice advice) => advice is { Advice: AdviceKind.Resume, Fault: not null } ? OnlyIfMended : Phrase.Empty;

    /// <summary>"; on again Sat 18 July if dry": the day on which what is skipped is wanted again; a box that pauses by itself needs no one for it.</summary>
    public static Phrase Again(ProgramAdvice advice) => advice is { Advice: AdviceKind.Skip, PauseDays: null, LookAgain: { } day }
        ? advice.GrowInBegins is null ? Phrase.Of($"; on again {SiteWords.Date(day)} if dry") : $"; on again {SiteWords.Date(day)}"
        : Phrase.Empty;

    /// <summary>For the note of a row of round.csv.</summary>
    public static Phrase Note(ProgramAdvice advice, SiteWords words) => Phrase.Sentences(
        advice.LeavesDial ? LeaveDial : Condition(advice),
        Phrase.Join("; ", advice.NewMinutes.Select(AdviceWords.NewMinutes)),
        AdviceWords.Split(advice),
        advice.NewMinutes.Count > 0 ? Phrase.Empty : AdviceWords.Until(advice, words));

    private static readonly Phrase LeaveDial = new("Leave the dial and take this program's starts out.");
    private static readonly Phrase OnlyIfMended = new(" (only if mended or over)");

    private static Phrase SplitShort(ProgramAdvice advice) => advice.InPlace is not { } split ? Phrase.Empty
        : $" ({SiteWords.Count(split.ThatFit)} starts for each, {SiteWords.Minutes(split.ApartMinutes)} from one to the next, 1/{SiteWords.Count(split.Starts)} of the minutes in each)";
}
