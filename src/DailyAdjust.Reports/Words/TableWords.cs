using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>Column headings.</summary>
internal static class TableWords
{
    public static readonly Phrase About = new("about");
    public static readonly Phrase After = new("after");
    public static readonly Phrase BelowFull = new("below full");
    public static readonly Phrase BelowFullNow = new("below full now");
    public static readonly Phrase Day = new("day");
    public static readonly Phrase Drained = new("drained");
    public static readonly Phrase Due = new("due");
    public static readonly Phrase Ends = new("ends");
    public static readonly Phrase Eto = new("ETo");
    public static readonly Phrase Gauge = new("gauge");
    public static readonly Phrase HoseOn = new("hose on");
    public static readonly Phrase Irrigation = new("irrigation");
    public static readonly Phrase Lost = new("drained off");
    public static readonly Phrase LowHigh = new("low, high");
    public static readonly Phrase PastAllowable = new("zones past the allowable");
    public static readonly Phrase Program = new("program");
    public static readonly Phrase Rain = new("rain");
    public static readonly Phrase RanOff = new("ran off");
    public static readonly Phrase SinceMidnight = new("since midnight");
    public static readonly Phrase Starts = new("starts");
    public static readonly Phrase Station = new("station");
    public static readonly Phrase Where = new("where");
    public static readonly Phrase Yesterday = new("yesterday");
}
