using System.Globalization;
using DailyAdjust.Core.Contracts;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Csv;
using DailyAdjust.Files.Logbook;

namespace DailyAdjust.Files.Rounds;

/// <summary>One row of a returned round sheet.</summary>
internal sealed class RoundRow(CsvRow row, CsvHeader header, Site site, AnswerableSheets? sheets, ProblemList problems)
{
    /// <summary>In the languages of the sheet: a crew answers as it speaks. An accent may stand as a sign of its own.</summary>
    private static readonly string[] Yes = ["yes", "y", "x", "✓", "✔", "done", "ok", "sí", "si", "si\u0301", "s", "hecho"];
    private static readonly string[] No = ["no", "n", "not done", "no hecho"];

    private bool _bad;

    /// <summary>What the row says, no entries where nobody answered; null when anything in it is wrong.</summary>
    public RoundAnswer? Read()
    {
        var (done, found) = (Cell(RoundColumns.Done), Cell(RoundColumns.Found));
        if (done.Length == 0 && found.Length == 0)
        {
            return new(row.Line, []);
        }

        if (!RoundText.TryReadSheet(Cell(RoundColumns.Sheet), out var sheet, out var issue))
        {
            Wrong(RoundColumns.Sheet, $"{Wording.Quote(Cell(RoundColumns.Sheet))} is not a sheet's date and issue", "put back what the sheet was sent with, such as 2026-06-10/1");
        }

        var program = Program();
        if (!_bad && program is { } line && sheets is not null && SheetFault.Of(sheets, sheet, issue, new(line.Place.Name, line.Place.Item)) is { } fault)
        {
            Wrong(RoundColumns.Sheet, fault.What, fault.Hint);
        }
        else if (!_bad && program is { } asked && TryRead(Cell(RoundColumns.New), out var written)
            && IssuedNumber.Of(sheets?.Said(sheet, issue, new(asked.Place.Name, asked.Place.Item)) ?? [], Cell(RoundColumns.Sheet), written) is { } altered)
        {
            Wrong(RoundColumns.New, altered.What, altered.Hint);
        }

        var wasFound = found.Length == 0 ? null : program is null ? null : OnDial(RoundColumns.Found, found, program.Value.Controller);
        var isNo = No.Contains(done, StringComparer.OrdinalIgnoreCase);
        var set = program is null ? null : isNo ? wasFound : Set(done, program.Value.Controller);
        var pauseDays = PauseDays();
        if (_bad || program is null)
        {
            return null;
        }

        var entries = new List<LogEntry>();
        if (wasFound is { } before)
        {
            entries.Add(Entry(program.Value.Place, before, site.Report.At[0], sheet, issue, "found on the dial") with { Text = LogEntry.Found });
        }

        if (set is { } after)
        {
            var pause = after.IsOff && Yes.Contains(done, StringComparer.OrdinalIgnoreCase) ? pauseDays : null;
            entries.Add(Entry(program.Value.Place, after, site.Report.RoundDoneBy, sheet, issue, Cell(RoundColumns.Note)) with
            {
                Until = pause is { } days ? new LogTime(sheet.AddDays(days), site.Report.RoundDoneBy) : null,
            });
        }

        if (isNo && wasFound is null)
        {
            // Nobody read the dial: `old` is only what the sheet took to be on it.
            entries.Add(Entry(program.Value.Place, null, site.Report.RoundDoneBy, sheet, issue, Cell(RoundColumns.Note)) with { Text = LogEntry.NotTurned });
            return new(row.Line, entries) { Stays = TryRead(Cell(RoundColumns.Old), out var stays) ? stays : null };
        }

        return new(row.Line, entries);
    }

    private (Controller Controller, Place Place)? Program()
    {
        var text = $"{Cell(RoundColumns.Controller)}/{Cell(RoundColumns.Program)}";
        if (PlaceText.Find(text, site) is not { Kind: PlaceKind.Program } place)
        {
            Wrong(RoundColumns.Program, $"there is no program {Wording.Quote(text)} on this site", PlaceText.Hint(text, site, PlaceKind.Program));
            return null;
        }

        return (site.ControllerOf(place.Name)!, place);
    }

    /// <summary>What was set; null where `done` is empty.</summary>
    private Setting? Set(string done, Controller controller)
    {
        if (done.Length == 0)
        {
            return null;
        }

        if (Yes.Contains(done, StringComparer.OrdinalIgnoreCase))
        {
            return Printed(RoundColumns.New);
        }

        return OnDial(RoundColumns.Done, done, controller);
    }

    /// <summary>Days that the sheet said to pause; null where it said to switch off, and on sheets of before there were any.</summary>
    private int? PauseDays()
    {
        var text = Cell(RoundColumns.PauseDays);
        if (text.Length == 0)
        {
            return null;
        }

        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var days) && days is >= 1 and <= 366)
        {
            return days;
        }

        Wrong(RoundColumns.PauseDays, $"{Wording.Quote(text)} is not a number of days", "put back what the sheet was sent with; leave it empty where the program was switched off");
        return null;
    }

    /// <summary>A number that stood on the sheet already.</summary>
    private Setting? Printed(string column)
    {
        var text = Cell(column);
        if (TryRead(text, out var setting))
        {
            return setting;
        }

        Wrong(column, text.Length == 0 ? $"{column} is empty" : $"{Wording.Quote(text)} is not a setting", "put back what the sheet was sent with, or write the number that was set into done");
        return null;
    }

    /// <summary>A number that somebody read off or put on the dial: the dial must be able to show it.</summary>
    private Setting? OnDial(string column, string text, Controller controller)
    {
        if (!TryRead(text, out var setting))
        {
            Wrong(
                column,
                $"{Wording.Quote(text)} is not an answer",
                NumberText.LooksLikeDecimalComma(text) ? $"write a decimal point: {text.Replace(',', '.')}"
                    : string.Equals(column, RoundColumns.Done, StringComparison.Ordinal) ? "write yes, no, or the number that was set (off where it was switched off)" : "write the number that the dial showed, or off");
            return null;
        }

        if (!setting.IsOff && !Dial.Shows(controller, setting.Percent))
        {
            Wrong(column, $"{Wording.Quote(text)} is not on the dial of {controller.Id}", $"it shows {Dial.InWords(controller)}");
            return null;
        }

        return setting;
    }

    private static bool TryRead(string text, out Setting setting)
    {
        setting = Setting.Off;
        if (string.Equals(text, "off", StringComparison.OrdinalIgnoreCase))
        {
            return true;
        }

        if (!NumberText.TrySplit(text, out var percent, out var unit) || (unit.Length > 0 && LogMeasure.Share.Find(unit) is null) || percent is < 0 or > Setting.LargestPercent)
        {
            return false;
        }

        setting = new(percent);
        return true;
    }

    /// <summary>Off is a setting of 0 here: a corrected sheet has to take the earlier answer's place, whichever of the two it was.</summary>
    private static LogEntry Entry(Place program, Setting? setting, TimeOnly at, DateOnly sheet, int? issue, string note) => new()
    {
        Time = new(sheet, at),
        Kind = LogKind.Setting,
        Where = program,
        Value = setting?.Percent,
        Unit = setting is null ? LogUnit.None : LogUnit.Percent,
        Sheet = sheet,
        Issue = issue,
        Note = note,
    };

    private string Cell(string column) => header.Cell(row, column);

    private void Wrong(string column, string what, string hint)
    {
        _bad = true;
        problems.Error(row.Line, header.Place(column), what, hint);
    }
}
