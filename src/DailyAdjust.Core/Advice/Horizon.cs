using DailyAdjust.Core.Irrigation;

namespace DailyAdjust.Core.Advice;

/// <summary>
/// What one visit decides about: every start from round_done_by of that day until round_done_by of the next visit day, or until a grow-in
/// takes the program's place; and the starts behind it that tell whether the program can wait, a grow-in's with them. Where a grow-in is in
/// force already, or begins before the program's own first start, nothing is decided: its starts are those of the visit, and those of the
/// program's own that follow its end.
/// </summary>
/// <param name="Opens">round_done_by of the visit day, or for a look after it the minute that follows, UTC.</param>
/// <param name="Starts">The starts in the horizon, in order.</param>
/// <param name="FirstDateAfter">The starts of the first date with one after the horizon; empty = there is none.</param>
/// <param name="LaterDate">The first start on a later date than those; null = there is none.</param>
internal sealed record Horizon(DateTimeOffset Opens, IReadOnlyList<ProgramStart> Starts, IReadOnlyList<ProgramStart> FirstDateAfter, ProgramStart? LaterDate)
{
    /// <summary>round_done_by of the next visit day, UTC.</summary>
    public required DateTimeOffset Closes { get; init; }

    /// <summary>It is in force when the visit opens, or has the visit's first start; null = the program's own starts run.</summary>
    public GrowIn? GrowIn { get; init; }

    /// <summary>Starts of the visit that must not run: they are no part of it.</summary>
    public IReadOnlyList<ProgramStart> TakenOut { get; init; } = [];

    public ProgramStart? After => FirstDateAfter.Count > 0 ? FirstDateAfter[0] : null;

    /// <summary>Without some of its starts; whole where nothing would be left.</summary>
    public Horizon Without(IReadOnlyList<ProgramStart> starts) =>
        starts.Count == 0 || starts.Count == Starts.Count ? this : this with { Starts = [.. Starts.Except(starts)], TakenOut = starts };

    /// <param name="context">Knows the hours, when somebody comes and which starts are in force.</param>
    /// <param name="program">Whose starts.</param>
    /// <param name="visit">The visit day.</param>
    /// <param name="notBefore">Starts before it have run, or will run as they are set; UTC.</param>
    public static Horizon Of(AdviceContext context, PlannedProgram program, DateOnly visit, DateTimeOffset notBefore = default)
    {
        var site = context.Site;
        var done = site.RoundDone(visit);
        var opens = done > notBefore ? done : notBefore;
        var next = context.Visits.NextAfter(program, visit);
        var closes = site.RoundDone(next);
        List<ProgramStart> starts = [], firstDate = [];
        ProgramStart? later = null;
        var growsIn = context.GrowIns.At(program.Key, opens);
        foreach (var (start, growIn) in context.StartsOf(program, opens))
        {
            var isInTime = start.At < closes && firstDate.Count == 0;
            growsIn ??= isInTime && starts.Count == 0 ? growIn?.GrowIn : null;
            if (isInTime && (growsIn is not null || growIn is null))
            {
                starts.Add(start);
            }
            else if (firstDate.Count == 0 || start.Date == firstDate[0].Date)
            {
                firstDate.Add(start);
            }
            else
            {
                later = start;
                break;
            }
        }

        return new Horizon(opens, starts, firstDate, later) { Closes = closes, GrowIn = growsIn };
    }
}
