namespace DailyAdjust.Reports.Words;

/// <summary>Column headings.</summary>
internal static class TableWords
{
    public const string About = "about";
    public const string After = "after";
    public const string BelowFull = "below full";
    public const string BelowFullNow = "below full now";
    public const string Day = "day";
    public const string Drained = "drained";
    public const string Due = "due";
    public const string Ends = "ends";
    public const string Eto = "ETo";
    public const string Gauge = "gauge";
    public const string HoseOn = "hose on";
    public const string Irrigation = "irrigation";
    public const string Lost = "drained off";
    public const string LowHigh = "low, high";
    public const string PastAllowable = "zones past the allowable";
    public const string Program = "program";
    public const string Rain = "rain";
    public const string RanOff = "ran off";
    public const string SinceMidnight = "since midnight";
    public const string Starts = "starts";
    public const string Station = "station";
    public const string Where = "where";
    public const string Yesterday = "yesterday";
}
