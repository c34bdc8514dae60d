using DailyAdjust.Core.Contracts;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Csv;
using DailyAdjust.Files.Rounds;

namespace DailyAdjust.Files.Logbook;

/// <summary>logbook.csv, from the inbox or line by line from `log`. A bad row is refused with its reason; the others count.</summary>
public static class LogbookReader
{
    /// <summary>Whether a text's first line is the header of a logbook.</summary>
    public static bool Recognises(string text) => CsvHeader.FirstLineHas(text, LogbookColumns.Time, LogbookColumns.Kind, LogbookColumns.Where);

    /// <param name="fileName">The name by which problems call the file.</param>
    /// <param name="text">Its text.</param>
    /// <param name="site">Says what the places and units mean.</param>
    /// <param name="sheets">Those that a round can speak of; null = whether one was issued is not asked.</param>
    public static LogbookReading Read(string fileName, string text, Site site, AnswerableSheets? sheets = null)
    {
        var problems = new ProblemList(fileName);
        var rows = CsvRows.Read(text, problems, out var unreadable);
        if (rows.Count == 0)
        {
            return new([], problems.InOrder(), 0, unreadable);
        }

        var header = CsvHeader.Read(rows[0], LogbookColumns.All, [LogbookColumns.Time, LogbookColumns.Kind, LogbookColumns.Where], problems);
        if (problems.HasErrors && !header.Complete)
        {
            return new([], problems.InOrder(), 0, unreadable + rows.Count - 1);
        }

        var ordinals = new Ordinals();
        var entries = new List<LogEntry>();
        foreach (var row in rows.Skip(1).Where(r => header.Fits(r, problems)))
        {
            var line = new LogLine
            {
                Time = header.Cell(row, LogbookColumns.Time),
                Kind = header.Cell(row, LogbookColumns.Kind),
                Where = header.Cell(row, LogbookColumns.Where),
                Value = header.Cell(row, LogbookColumns.Value),
                Unit = header.Cell(row, LogbookColumns.Unit),
                Until = header.Cell(row, LogbookColumns.Until),
                By = header.Cell(row, LogbookColumns.By),
                Note = header.Cell(row, LogbookColumns.Note),
                Instrument = header.Cell(row, LogbookColumns.Instrument),
                RodLength = header.Cell(row, LogbookColumns.RodLength),
            };
            var read = new LogRow(line, site, row.Line, header.Place, problems);
            var entry = read.Read();
            if (entry is { Kind: LogKind.Round, Sheet: { } sheet } && sheets is not null && SheetFault.Of(sheets, sheet, entry.Issue) is { } fault)
            {
                problems.Error(row.Line, header.Place(LogbookColumns.Value), fault.What, fault.Hint);
                entry = null;
            }

            if (read.Address is { } address)
            {
                // A refused row takes its ordinal all the same: put right in a later file, it moves no other row's identity.
                var ordinal = ordinals.Next(address);
                if (entry is not null)
                {
                    entries.Add(entry with { Ordinal = ordinal });
                }
            }
        }

        return new(entries, problems.InOrder(), entries.Count, unreadable + rows.Count - 1 - entries.Count);
    }

    /// <summary>One line that was not written into a file; its ordinal is 0. Problems count its cells as columns.</summary>
    public static LogbookReading Read(LogLine line, Site site)
    {
        var problems = new ProblemList("log");
        foreach (var (column, _) in line.Cells().Where(c => CsvRows.HasControl(c.Text) || c.Text.AsSpan().ContainsAny('\n', '\r')))
        {
            problems.Error(1, Place(column), $"a line break or another control character stands in the {column}", "type it again, in one line; what was pasted may bring it along");
        }

        var entry = problems.HasErrors ? null : new LogRow(line, site, 1, Place, problems).Read();
        return new(entry is null ? [] : [entry], problems.InOrder(), entry is null ? 0 : 1, entry is null ? 1 : 0);

        static int Place(string column) => LogbookColumns.All.ToList().IndexOf(column) + 1;
    }
}
