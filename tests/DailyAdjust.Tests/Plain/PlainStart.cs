using DailyAdjust.Core.Sites;

namespace DailyAdjust.Tests.Plain;

/// <summary>One start of one program.</summary>
internal sealed record PlainStart(ProgramKey Program, DateOnly Date, DateTimeOffset At)
{
    /// <summary>The starts of a program on a date of its controller's clock.</summary>
    public static IEnumerable<PlainStart> On(Site site, Controller controller, WateringProgram program, DateOnly date)
    {
        if (!program.Days.Includes(date))
        {
            return [];
        }

        return program.Starts.Select(time => new PlainStart(
            new(controller.Id, program.Id),
            date,
            controller.ClockStaysStandard ? site.Clock.ToInstantStandard(date, time) : site.Clock.ToInstant(date, time)));
    }
}
