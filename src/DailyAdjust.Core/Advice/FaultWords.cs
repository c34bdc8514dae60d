using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>A program that is off with a note of why, in words.</summary>
internal static class FaultWords
{
    /// <summary>"Off since Mon 13 July, "lateral broken""; without a note of what is wrong "Off since Mon 13 July".</summary>
    public static Phrase OffSince(Fault fault, SiteClock clock) => $"Off since {Words.Date(clock.DateOf(fault.Since))}{(fault.Note.Length > 0 ? $", \"{fault.Note}\"" : "")}";

    /// <summary>A sentence before the words that turn it on.</summary>
    public static Phrase BeforeTurningOn(Fault fault, SiteClock clock) => OffSince(fault, clock) + (fault.Answer is { } answer
        ? $"; noted on {answer.Where} since, {Words.Date(clock.DateOf(answer.At))}: \"{answer.Note}\"."
        : new Phrase(": turn it on only if that is mended or over."));
}
