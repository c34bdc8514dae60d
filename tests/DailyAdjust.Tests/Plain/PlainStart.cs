using DailyAdjust.Core.Sites;

namespace DailyAdjust.Tests.Plain;

/// <summary>One start of one program.</summary>
internal sealed record PlainStart(ProgramKey Program, DateOnly Date, DateTimeOffset At)
{
    /// <summary>The starts of a program on a date of its controller's clock; none before the balance begins.</summary>
    public static IEnumerable<PlainStart> On(Site site, Controller controller, WateringProgram program, DateOnly date)
    {
        if (date < site.Start || !program.Days.Includes(date))
        {
            return [];
        }

        return program.Starts.Select(time => new PlainStart(
            new(controller.Id, program.Id),
            date,
            controller.ClockStaysStandard ? site.Clock.ToInstantStandard(date, time) : site.Clock.ToInstant(date, time)));
    }

    /// <summary>
    /// The starts whose water belongs to a zone day. A box on standard time that starts at 23:30 in summer starts at 00:30 of the
    /// next day of the site.
    /// </summary>
    public static IEnumerable<PlainStart> InDay(Site site, Controller controller, WateringProgram program, DateOnly day) =>
        !controller.ClockStaysStandard
            ? On(site, controller, program, day)
            : Enumerable.Range(-1, 3)
                .SelectMany(n => On(site, controller, program, day.AddDays(n)))
                .Where(s => site.Clock.DateOf(s.At) == day);
}
