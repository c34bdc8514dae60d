using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Changes that sheets asked for and that nobody has answered.</summary>
internal sealed class Unanswered
{
    private const double MinutesPerDay = 1440;

    /// <summary>For so long a round that was passed over is asked for.</summary>
    private const int DaysPassedOver = 14;

    private readonly AdviceContext _context;

    /// <summary>The newest issue of each round (a later look of a date may ask for a second one), ascending by as-of instant.</summary>
    private readonly List<IssuedSheet> _rounds;

    private readonly Dictionary<DateOnly, int> _newestIssue = [];

    /// <param name="context">The morning's. A look after the round asks about the round of its own date too.</param>
    /// <param name="sheets">Every sheet issued so far.</param>
    public Unanswered(AdviceContext context, IReadOnlyList<IssuedSheet> sheets)
    {
        _context = context;
        var (site, date) = (context.Site, context.Date);
        var isAfterRound = site.Report.IsAfterRound(site.Clock, date, context.AsOf);
        _rounds = [.. sheets
            .Where(s => s.Date < date || (isAfterRound && s.Date == date && !site.Report.IsAfterRound(site.Clock, date, s.AsOf)))
            .GroupBy(s => (s.Date, IsSecond: site.Report.IsAfterRound(site.Clock, s.Date, s.AsOf)))
            .Select(g => g.MaxBy(s => s.Issue)!)
            .OrderBy(s => s.AsOf)];
        foreach (var sheet in sheets)
        {
            _newestIssue[sheet.Date] = Math.Max(sheet.Issue, _newestIssue.GetValueOrDefault(sheet.Date));
        }
    }

    /// <summary>
    /// The lines that asked for a walk to a program since somebody last said anything about it, ascending. Any later word on what is on the program answers all of them, and so does a note of what
    /// is wrong with it: whoever wrote it found it off. That nothing was turned for a later sheet answers that sheet alone. A number on the one dial of its box answers those that only asked for a number.
    /// </summary>
    public IReadOnlyList<OpenLine> LinesOf(ProgramKey program)
    {
        var (settings, noted) = (_context.Settings, _context.FaultOf(program)?.NotedAt);
        var answered = settings.LastAnswer(program) ?? DateTimeOffset.MinValue;
        return [.. _rounds
            .Skip(_rounds.FindLastIndex(s => s.AsOf < answered) + 1)
            .Where(s => !settings.IsAnswered(program, s.AsOf) && (noted is null || noted <= s.AsOf))
            .SelectMany(s => s.Lines.Where(l => l.Program == program && l.Asks && !(l.Advice == AdviceKind.Set && settings.IsAnswered(program, s.AsOf, onItsDial: true))).Select(l => new OpenLine(NameOf(s), l) { Issue = s.Issue, MadeAt = s.AsOf }))];
    }

    /// <summary>
    /// Rounds of the last two weeks that asked for a walk to a program and were passed over: a later sheet's round was answered, theirs was not, nor was anything else said
    /// of the program in between. The balance has them as not done. Ascending.
    /// </summary>
    public static IReadOnlyList<DateOnly> PassedOver(AdviceContext context, IReadOnlyList<IssuedSheet> sheets, IReadOnlyList<LogEntry> log)
    {
        var first = context.Date.AddDays(-DaysPassedOver);
        List<IssuedSheet> recent = [.. sheets.Where(s => s.Date < context.Date && s.Date >= first).NewestOfDates()];
        List<LogEntry> words = [.. log.Where(e => e.Kind is LogKind.Round or LogKind.Setting or LogKind.Off or LogKind.Pause && (e.Sheet ?? e.Time.Date) >= first)];
        return [.. context.Programs.SelectMany(p => PassedOver(p.Key, context.Site.Clock, recent, words)).Distinct().Order()];
    }

    private static IEnumerable<DateOnly> PassedOver(ProgramKey program, SiteClock clock, List<IssuedSheet> recent, List<LogEntry> said)
    {
        List<LogEntry> words = [.. said.Where(e => e.Kind == LogKind.Round || e.Where.Covers(program))];
        foreach (var sheet in recent)
        {
            var next = words.Where(e => e.Sheet > sheet.Date && !string.Equals(e.Text, LogEntry.NotTurned, StringComparison.Ordinal) && !e.Except.Any(x => x.Covers(program))).Select(e => e.Sheet!.Value).DefaultIfEmpty(DateOnly.MinValue).Min();
            var isSaid = words.Exists(e => e.Sheet == sheet.Date || (e.Sheet is null && e.Time.Instant(clock) >= sheet.AsOf && e.Time.Date <= next));
            if (next > DateOnly.MinValue && !isSaid && sheet.Lines.Any(l => l.Program == program && l.Asks))
            {
                yield return sheet.Date;
            }
        }
    }

    /// <summary>The logbook as it would be had every unanswered line been done by the hour at which its round was to be done.</summary>
    public static IReadOnlyList<LogEntry> AsIfDone(Site site, IReadOnlyList<LogEntry> log, IEnumerable<OpenLine> open) =>
    [
        .. log,
        .. open.Select(o => new LogEntry
        {
            Time = o.DoneBy(site),
            Kind = o.Line.PauseDays is not null ? LogKind.Pause : o.TurnsOff ? LogKind.Off : LogKind.Setting,
            Where = new Place(PlaceKind.Program, o.Line.Program.Controller, o.Line.Program.Program),
            Value = o.Line.PauseDays is { } days ? days * MinutesPerDay : o.TurnsOff ? null : o.Line.Percent,
            Unit = o.Line.PauseDays is not null ? LogUnit.Minutes : o.TurnsOff ? LogUnit.None : LogUnit.Percent,
            Sheet = o.Sheet,
        }),
    ];

    /// <summary>A date alone means its newest issue, which may be the one that is being made.</summary>
    private OpenRound NameOf(IssuedSheet sheet) => new(sheet.Date, sheet.Date == _context.Date || _newestIssue[sheet.Date] > sheet.Issue ? sheet.Issue : null);
}

/// <summary>A line of an earlier sheet that asked for a walk and was not answered.</summary>
/// <param name="Round">Which sheet.</param>
/// <param name="Line">What it said.</param>
internal sealed record OpenLine(OpenRound Round, IssuedLine Line)
{
    public DateOnly Sheet => Round.Date;

    /// <summary>Which issue of the sheet.</summary>
    public int Issue { get; init; }

    /// <summary>The sheet's as-of instant, UTC.</summary>
    public DateTimeOffset MadeAt { get; init; }

    /// <summary>When it would have been done: by round_done_by, or where the sheet was made after it, when that was there.</summary>
    public LogTime DoneBy(Site site) => site.Report.IsAfterRound(site.Clock, Sheet, MadeAt)
        ? new LogTime(Sheet, TimeOnly.FromDateTime(site.Clock.ToLocal(MadeAt).DateTime))
        : new LogTime(Sheet, site.Report.RoundDoneBy);

    public bool TurnsOff => Line.Advice is AdviceKind.Skip or AdviceKind.Off;
}
