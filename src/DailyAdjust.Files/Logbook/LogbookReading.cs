using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Files.Logbook;

/// <summary>What came of reading a logbook file, or a returned round sheet.</summary>
/// <param name="Entries">The good ones, in the order of the file.</param>
/// <param name="Problems">Each bad row with its line, cell and reason; warnings too. By line and cell.</param>
/// <param name="RowsRead">Rows that gave entries, or needed none.</param>
/// <param name="RowsRefused">Rows that gave none because of an error.</param>
public sealed record LogbookReading(IReadOnlyList<LogEntry> Entries, IReadOnlyList<Problem> Problems, int RowsRead, int RowsRefused);
