using DailyAdjust.Core.Contracts;

namespace DailyAdjust.Files.Logbook;

/// <summary>One line of the logbook as written, cell by cell; what is left out is empty.</summary>
public sealed record LogLine
{
    public string Time { get; init; } = "";

    public string Kind { get; init; } = "";

    public string Where { get; init; } = "";

    public string Value { get; init; } = "";

    public string Unit { get; init; } = "";

    public string Until { get; init; } = "";

    public string By { get; init; } = "";

    public string Note { get; init; } = "";

    public string Instrument { get; init; } = "";

    public string RodLength { get; init; } = "";

    /// <summary>By column, in its order.</summary>
    public IEnumerable<(string Column, string Text)> Cells() =>
        LogbookColumns.All.Zip([Time, Kind, Where, Value, Unit, Until, By, Note, Instrument, RodLength]);
}
