using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Core.Logbook;

/// <summary>What one entry of the logbook says of one program's setting.</summary>
/// <param name="From">From when the setting is on the program.</param>
/// <param name="Said">When it was said.</param>
/// <param name="Setting">Null: an answer that changes nothing.</param>
internal sealed record SettingChange(DateTimeOffset From, DateTimeOffset Said, Setting? Setting)
{
    /// <summary>A pause: when what was on the program before returns by itself; null = it stays.</summary>
    public DateTimeOffset? Ends { get; init; }

    public LogEntry? PausedBy { get; init; }

    /// <summary>A sheet asked for it, and somebody said that it was done.</summary>
    public bool IsBySheet { get; init; }

    /// <summary>Said of another program on the same dial: the number changes, off and paused stay.</summary>
    public bool IsDialOnly { get; init; }

    /// <summary>Nothing was turned for the sheet of this as-of instant, UTC: that answers what it asked for, and tells nothing of what is on the program. Null = something else was said.</summary>
    public DateTimeOffset? NotTurnedOf { get; init; }

    public bool IsNotTurned => NotTurnedOf is not null;

    public static SettingChange NotTurned(DateTimeOffset said, IssuedSheet sheet) => new(said, said, Setting: null) { NotTurnedOf = sheet.AsOf };
}
