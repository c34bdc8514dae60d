using DailyAdjust.Core.Contracts;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Csv;
using DailyAdjust.Files.Logbook;

namespace DailyAdjust.Files.Rounds;

/// <summary>
/// A round.csv that comes back filled in, as logbook entries. `done` = yes: the row's own number was set; no: nothing
/// was turned, so what `found` says stays, and without it nobody knows more of the dial than before; a number: that was set. `found`: what the dial showed before. What was set
/// stands at the time by which the round of the sheet's date is done, what was found at the hour of that sheet: whoever takes the file in knows when it came, and puts an earlier time.
/// A row without an answer gives no entry; a bad row is refused with its reason and the others count. Rows that say two things of one line of a sheet, or put two numbers on one dial, are refused.
/// </summary>
public static class RoundSheetReader
{
    /// <summary>Whether a text's first line is the header of a round sheet.</summary>
    public static bool Recognises(string text) => CsvHeader.FirstLineHas(text, RoundColumns.Sheet, RoundColumns.Program, RoundColumns.Done);

    /// <param name="fileName">The name by which problems call the file.</param>
    /// <param name="text">Its text.</param>
    /// <param name="site">The site as the sheet knew it.</param>
    /// <param name="sheets">Those that can be answered; null = whether one was issued is not asked.</param>
    public static LogbookReading Read(string fileName, string text, Site site, AnswerableSheets? sheets = null)
    {
        var problems = new ProblemList(fileName);
        var rows = CsvRows.Read(text, problems, out var refused);
        if (rows.Count == 0)
        {
            return new([], problems.InOrder(), 0, refused);
        }

        string[] needed = [RoundColumns.Sheet, RoundColumns.Controller, RoundColumns.Program, RoundColumns.Old, RoundColumns.New, RoundColumns.Done];
        var header = CsvHeader.Read(rows[0], RoundColumns.All, needed, problems);
        if (!header.Complete)
        {
            return new([], problems.InOrder(), 0, refused + rows.Count - 1);
        }

        var ordinals = new Ordinals();
        var answers = new List<RoundAnswer>();
        var read = 0;
        foreach (var row in rows.Skip(1))
        {
            if (!header.Fits(row, problems) || new RoundRow(row, header, site, sheets, problems).Read() is not { } answer)
            {
                refused++;
                continue;
            }

            read++;
            answers.Add(answer);
        }

        var agreeing = DialAgreement.Of(RowAgreement.Of(answers, header, problems), site, header, problems);
        var against = answers.Count - agreeing.Count;
        return new([.. agreeing.SelectMany(a => a.Entries).Select(e => e with { Ordinal = ordinals.Next((e.Time, e.Kind, e.Where)) })], problems.InOrder(), read - against, refused + against);
    }
}
