using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>A later look of the day: what it speaks about, and how much of the day's weather is measured by now.</summary>
internal static class SecondLookWords
{
    public static readonly Phrase Title = new("A later look");

    /// <summary>"Made with what was known at 16:00 today. It speaks about starts from 16:01 today on; the round before it was to be done by then. ..."</summary>
    public static Phrase Line(SecondLook look, SiteWords words)
    {
        var round = look.AfterRound ? new Phrase("; the day's round was to be done before it, so what stands here asks for a walk of its own") : Phrase.Empty;
        var eto = look.Eto is { } known
            ? $"Reference ET since midnight is {words.DepthOf(known.Mm)}, {(known.IsSupplied ? new Phrase("the station's own figure") : new Phrase("measured"))} through {words.When(known.Through)} (station {known.Station}){(look.RestMm is { } rest ? $"; {words.DepthOf(rest)} more is expected today" : Phrase.Empty)}."
            : new Phrase("None of today's reference ET is measured yet: the whole day counts as expected.");
        return $"Made with what was known at {words.When(look.AsOf)}. It speaks about starts from {words.When(look.StartsFrom)} on{round}. {eto}";
    }
}
