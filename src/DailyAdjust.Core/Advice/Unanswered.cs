using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Changes that sheets asked for and that nobody has answered.</summary>
public static class Unanswered
{
    /// <summary>The newest line that asked for a walk to a program and was not answered since; null = none.</summary>
    public static (IssuedSheet Sheet, IssuedLine Line)? LineOf(ProgramKey program, SettingHistory settings, IReadOnlyList<IssuedSheet> sheets, DateOnly before)
    {
        var newest = sheets
            .Where(s => s.Date < before)
            .GroupBy(s => s.Date)
            .Select(g => g.MaxBy(s => s.Issue)!)
            .OrderByDescending(s => s.Date);
        foreach (var sheet in newest)
        {
            if (settings.LastAnswer(program) is { } said && said > sheet.AsOf)
            {
                return null;
            }

            var line = sheet.Lines.FirstOrDefault(l => l.Program == program && l.Asks);
            if (line is not null)
            {
                return (sheet, line);
            }
        }

        return null;
    }

    /// <summary>The logbook as it would be had every unanswered line been done.</summary>
    public static IReadOnlyList<LogEntry> AsIfDone(
        Site site, IReadOnlyList<LogEntry> log, IReadOnlyList<IssuedSheet> sheets, SettingHistory settings, DateOnly before)
    {
        var entries = new List<LogEntry>(log);
        foreach (var controller in site.Controllers)
        {
            foreach (var program in controller.Programs)
            {
                var key = new ProgramKey(controller.Id, program.Id);
                if (LineOf(key, settings, sheets, before) is not { } found)
                {
                    continue;
                }

                var isOff = found.Line.Advice is AdviceKind.Skip or AdviceKind.Off;
                entries.Add(new LogEntry
                {
                    Time = new LogTime(found.Sheet.Date, site.Report.RoundDoneBy),
                    Kind = isOff ? LogKind.Off : LogKind.Setting,
                    Where = new Place(PlaceKind.Program, key.Controller, key.Program),
                    Value = isOff ? null : found.Line.Percent,
                    Unit = isOff ? LogUnit.None : LogUnit.Percent,
                });
            }
        }

        return entries;
    }
}
