using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Irrigation;

/// <summary>One start of one program.</summary>
/// <param name="Date">The controller's own date of the start (decides water days).</param>
/// <param name="At">The instant, UTC.</param>
public readonly record struct ProgramStart(DateOnly Date, DateTimeOffset At);

/// <summary>When a program starts.</summary>
public static class ProgramStarts
{
    /// <summary>How far ahead a program's next start is looked for; beyond it the program has none.</summary>
    internal const int DaysAhead = 370;

    /// <summary>The starts whose date is the given one, by the controller's clock, in order of instant.</summary>
    public static IReadOnlyList<ProgramStart> OnDate(Site site, Controller controller, WateringProgram program, DateOnly date)
    {
        if (date < site.Start || !program.Days.Includes(date))
        {
            return [];
        }

        var starts = new ProgramStart[program.Starts.Count];
        for (var i = 0; i < starts.Length; i++)
        {
            starts[i] = new ProgramStart(date, Instant(site, controller, date, program.Starts[i]));
        }

        return starts;
    }

    /// <summary>When a time of day comes on a controller's own clock, UTC.</summary>
    internal static DateTimeOffset Instant(Site site, Controller controller, DateOnly date, TimeOnly time) =>
        controller.ClockStaysStandard ? site.Clock.ToInstantStandard(date, time) : site.Clock.ToInstant(date, time);

    /// <summary>The starts whose instant lies in the site's calendar day, in order of instant.</summary>
    public static IReadOnlyList<ProgramStart> InDay(Site site, Controller controller, WateringProgram program, DateOnly day)
    {
        if (!controller.ClockStaysStandard)
        {
            return OnDate(site, controller, program, day);
        }

        // A controller on standard time may start on the site's next or last calendar date.
        DateTimeOffset begin = site.Clock.DayStart(day), end = site.Clock.DayEnd(day);
        return [.. new[] { day.AddDays(-1), day, day.AddDays(1) }.SelectMany(date => OnDate(site, controller, program, date)).Where(s => s.At >= begin && s.At < end)];
    }
}
