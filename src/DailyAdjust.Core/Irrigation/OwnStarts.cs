using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Irrigation;

/// <summary>
/// The own starts of every program by the site's calendar day, each laid out once: a morning asks for the days to come again and again, and so does the next one. Older days are forgotten.
/// For one thread.
/// </summary>
internal sealed class OwnStarts(Site site)
{
    /// <summary>More than <see cref="ProgramStarts.DaysAhead"/>: nobody's days push out those that he still needs.</summary>
    private const int DaysKept = 512;

    private readonly (DateOnly Date, Dictionary<PlannedProgram, StartInForce[]> Starts)?[] _days = new (DateOnly, Dictionary<PlannedProgram, StartInForce[]>)?[DaysKept];

    /// <summary>Those of a program whose instant lies in a day, in order; to be read only.</summary>
    public StartInForce[] On(PlannedProgram program, DateOnly day)
    {
        var place = day.DayNumber % DaysKept;
        if (_days[place] is not { } known || known.Date != day)
        {
            _days[place] = known = (day, new Dictionary<PlannedProgram, StartInForce[]>(ReferenceEqualityComparer.Instance));
        }

        return known.Starts.TryGetValue(program, out var starts) ? starts : known.Starts[program] = Of(site, program, day);
    }

    /// <summary>The same, laid out anew.</summary>
    public static StartInForce[] Of(Site site, PlannedProgram program, DateOnly day)
    {
        var own = ProgramStarts.InDay(site, program.Controller, program.Program, day);
        if (own.Count == 0)
        {
            return [];
        }

        var starts = new StartInForce[own.Count];
        for (var i = 0; i < starts.Length; i++)
        {
            starts[i] = new StartInForce(own[i], null);
        }

        return starts;
    }
}
