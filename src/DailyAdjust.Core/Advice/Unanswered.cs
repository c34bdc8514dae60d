using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Changes that sheets asked for and that nobody has answered.</summary>
internal static class Unanswered
{
    private const double MinutesPerDay = 1440;

    /// <summary>
    /// The lines that asked for a walk to a program since somebody last said anything about it, by the newest issue of each date,
    /// ascending. Any later word on the program answers all of them.
    /// </summary>
    public static IReadOnlyList<OpenLine> LinesOf(ProgramKey program, SettingHistory settings, IReadOnlyList<IssuedSheet> sheets, DateOnly before)
    {
        var said = settings.LastAnswer(program);
        return [.. sheets
            .Where(s => s.Date < before)
            .GroupBy(s => s.Date)
            .Select(g => g.MaxBy(s => s.Issue)!)
            .Where(s => said is null || said <= s.AsOf)
            .OrderBy(s => s.Date)
            .SelectMany(s => s.Lines.Where(l => l.Program == program && l.Asks).Select(l => new OpenLine(s.Date, l)))];
    }

    /// <summary>The logbook as it would be had every unanswered line been done by the hour at which its round was to be done.</summary>
    public static IReadOnlyList<LogEntry> AsIfDone(Site site, IReadOnlyList<LogEntry> log, IEnumerable<OpenLine> open) =>
    [
        .. log,
        .. open.Select(o => new LogEntry
        {
            Time = new LogTime(o.Sheet, site.Report.RoundDoneBy),
            Kind = o.Line.PauseDays is not null ? LogKind.Pause : o.TurnsOff ? LogKind.Off : LogKind.Setting,
            Where = new Place(PlaceKind.Program, o.Line.Program.Controller, o.Line.Program.Program),
            Value = o.Line.PauseDays is { } days ? days * MinutesPerDay : o.TurnsOff ? null : o.Line.Percent,
            Unit = o.Line.PauseDays is not null ? LogUnit.Minutes : o.TurnsOff ? LogUnit.None : LogUnit.Percent,
        }),
    ];
}

/// <summary>A line of an earlier sheet that asked for a walk and was not answered.</summary>
/// <param name="Sheet">That sheet's date.</param>
/// <param name="Line">What it said.</param>
internal sealed record OpenLine(DateOnly Sheet, IssuedLine Line)
{
    public bool TurnsOff => Line.Advice is AdviceKind.Skip or AdviceKind.Off;
}
