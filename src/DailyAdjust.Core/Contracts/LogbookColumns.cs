namespace DailyAdjust.Core.Contracts;

/// <summary>The columns of logbook.csv: kept by a person or written by `log`, read from the inbox.</summary>
public static class LogbookColumns
{
    public const string Time = "time";

    public const string Kind = "kind";

    public const string Where = "where";

    public const string Value = "value";

    public const string Unit = "unit";

    public const string Until = "until";

    public const string By = "by";

    public const string Note = "note";

    /// <summary>Which moisture meter a probe was read with.</summary>
    public const string Instrument = "instrument";

    /// <summary>How deep its rods reach.</summary>
    public const string RodLength = "rod length";

    /// <summary>All of them, in the order in which they are written.</summary>
    public static IReadOnlyList<string> All { get; } = [Time, Kind, Where, Value, Unit, Until, By, Note, Instrument, RodLength];
}
