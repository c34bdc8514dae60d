using System.Buffers;
using System.Globalization;
using DailyAdjust.Core.Contracts;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Files.Logbook;

/// <summary>Writes entries as lines of logbook.csv that read back as the same entries. Values stand in metric, exact.</summary>
public static class LogbookWriter
{
    private static readonly SearchValues<char> Special = SearchValues.Create(",;\t|\"\n\r");

    /// <summary>The first line.</summary>
    public static string Header { get; } = string.Join(',', LogbookColumns.All);

    public static LogLine ToLine(LogEntry entry) => new()
    {
        Time = LogTimeText.Format(entry.Time),
        Kind = KindWord.Of(entry.Kind),
        Where = entry.Where.ToString(),
        Value = entry.Kind == LogKind.Round ? RoundText.Format(entry) : entry.Value is { } value ? Times(entry) + value.ToString("R", CultureInfo.InvariantCulture) : entry.Text,
        Unit = Unit(entry.Unit),
        Until = entry.Until is { } until ? LogTimeText.Format(until) : "",
        By = entry.By,
        Note = entry.Note,
        Instrument = entry.Instrument,
        RodLength = entry.RodM is { } rod ? rod.ToString("R", CultureInfo.InvariantCulture) + " " + Units.Spellings(UnitKind.Length)[0] : "",
    };

    /// <summary>One line, without its end.</summary>
    public static string ToCsv(LogEntry entry) => string.Join(',', ToLine(entry).Cells.Select(Cell));

    private static string Times(LogEntry entry) => entry.Times is { } times ? string.Create(CultureInfo.InvariantCulture, $"{times} x ") : "";

    private static string Unit(LogUnit unit) => unit switch
    {
        LogUnit.None => "",
        LogUnit.Percent => Units.Spellings(UnitKind.Percent)[0],
        LogUnit.Minutes => Units.Spellings(UnitKind.Duration)[0],
        LogUnit.Mm => Units.Spellings(UnitKind.Depth)[0],
        LogUnit.Litres => Units.Spellings(UnitKind.Volume)[0],
        LogUnit.LitresPerMin => Units.Spellings(UnitKind.Flow)[0],
        _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, "Not a unit of the logbook."),
    };

    private static string Cell(string text) =>
        text.AsSpan().ContainsAny(Special) ? "\"" + text.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : text;
}
