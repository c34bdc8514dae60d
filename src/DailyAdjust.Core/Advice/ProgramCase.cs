using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>One program on one morning: its setting, its horizon, and what its zones need of it.</summary>
internal sealed class ProgramCase
{
    private readonly AdviceContext _context;

    /// <param name="context">The morning.</param>
    /// <param name="program">The program.</param>
    /// <param name="reckons">Whether the weather allows any reckoning.</param>
    /// <param name="asIfVisited">As if somebody came today, whatever the visit days are.</param>
    /// <param name="newSettings">What other programs run at from this morning's round on, where that is decided already.</param>
    /// <param name="rain">Rain to suppose.</param>
    public ProgramCase(AdviceContext context, PlannedProgram program, bool reckons, bool asIfVisited, IReadOnlyDictionary<ProgramKey, Setting> newSettings, SupposedRain rain)
    {
        _context = context;
        NewSettings = newSettings;
        Program = program;
        Present = context.Settings.At(program.Key, context.AsOf);
        var whole = Horizon.Of(context, program, context.Date, context.RoundDone);
        GrowIn = whole.GrowIn;
        GrowInBegins = GrowIn?.From > context.RoundDone ? whole.Starts[0].At : null;
        TakenOut = OrderHits.Starts(context, program, whole);
        Horizon = whole.Without([.. whole.Starts.Where(s => TakenOut.Any(t => t.At == s.At))]);
        if (Present.PausedUntil is { } ends && whole.Starts.Count > 0 && whole.Starts[^1].At >= ends)
        {
            // It runs by itself again before the next visit: it is as good as on, though its first start may still be paused.
            FirstIsPaused = whole.Starts[0].At < ends;
            Present = context.Settings.At(program.Key, whole.Starts[^1].At);
        }

        Noted = context.FaultOf(program.Key);
        IsVisit = asIfVisited || context.Visits.IsVisit(program, context.Date);
        Need = reckons && IsVisit && GrowIn is null && Horizon.Starts.Count > 0 ? NeedOn(Horizon, Setting.Off, rain) : null;
    }

    internal AdviceContext Context => _context;

    public PlannedProgram Program { get; }

    public SettingInForce Present { get; }

    /// <summary>Without the starts that must not run.</summary>
    public Horizon Horizon { get; }

    /// <summary>Starts before the next visit that must not run; all of them where none may.</summary>
    public IReadOnlyList<TakenOutStart> TakenOut { get; }

    /// <summary>The box is paused over the first start and runs by itself again before a later one.</summary>
    public bool FirstIsPaused { get; }

    public bool IsVisit { get; }

    /// <summary>In force from today's round on, or before its own first start; null = its own starts run.</summary>
    public GrowIn? GrowIn { get; }

    /// <summary>The first start of that grow-in where it begins after today's round, UTC; null = it is in force, or there is none.</summary>
    public DateTimeOffset? GrowInBegins { get; }

    /// <summary>What other programs run at from this morning's round on, where that is decided already.</summary>
    public IReadOnlyDictionary<ProgramKey, Setting> NewSettings { get; }

    /// <summary>It is off and somebody noted why: it is asked about unless a later note says that it is mended.</summary>
    public Fault? Noted { get; }

    /// <summary>The note keeps it off: whoever ordered a grow-in did not say that it is mended.</summary>
    public Fault? Fault => Noted is { Answer: null } && (Noted.IsOwnNote || GrowIn is not null || _context.Site.Report.OffWithNoteStaysOff) ? Noted : null;

    /// <summary>Its number is for the ground to say: no grow-in and no fault speaks for it.</summary>
    public bool IsOwn => GrowIn is null && Fault is null;

    /// <summary>Null: no start in the horizon, no visit day, or a grow-in.</summary>
    public ProgramNeed? Need { get; }

    /// <summary>Whether the program could be left out of this horizon.</summary>
    public static bool CanSkip(Site site, ProgramNeed need) =>
        need.CanWait && (need.ExactPercent <= site.Report.SkipBelowPercent || !need.Due);

    /// <summary>What the program needs in a horizon, after running at some setting in between, with some rain supposed.</summary>
    public ProgramNeed NeedOn(Horizon horizon, Setting between, SupposedRain rain)
    {
        ForecastOutline? outline = null;
        var zones = new List<ZoneNeed>();
        foreach (var zone in OrderHits.ZonesThatRun(_context, Program, horizon))
        {
            outline = outline?.Serves(zone) == true ? outline : new ForecastOutline(_context, zone, Program, horizon, between, rain, NewSettings);
            zones.Add(ZoneNeed.Of(outline.Of(zone), Program));
        }

        return ProgramNeed.Of(zones, _context.Site.Report.Satisfy);
    }

    /// <summary>The visits after today's that have a start to decide about, soonest first. While a grow-in is in force there is none.</summary>
    public IEnumerable<(DateOnly Visit, Horizon Horizon)> LaterVisits(int days)
    {
        var visit = _context.Visits.NextAfter(Program, _context.Date);
        while (visit.DayNumber - _context.Date.DayNumber <= days)
        {
            var horizon = Horizon.Of(_context, Program, visit);
            if (horizon.Starts.Count > 0 && horizon.GrowIn is null)
            {
                yield return (visit, horizon);
            }

            visit = _context.Visits.NextAfter(Program, visit);
        }
    }
}
