using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>A box to verify after a power loss: clock and weekday, programs, percentage.</summary>
/// <param name="Box">Which, since when, and why.</param>
/// <param name="Settings">What the dials should show by the logbook, in the box's order.</param>
public sealed record BoxToVerify(UnverifiedBox Box, IReadOnlyList<(ProgramKey Program, Setting Setting)> Settings);

/// <summary>The clocks are moved for summer or winter, and somebody has to move those of the boxes.</summary>
/// <param name="At">UTC.</param>
/// <param name="By">Forward above 0, back below.</param>
/// <param name="IsAhead">It is still to come.</param>
/// <param name="Controllers">Boxes whose clock is moved by hand, and that nobody has verified since; in walking order.</param>
public sealed record ClockChange(DateTimeOffset At, TimeSpan By, bool IsAhead, IReadOnlyList<string> Controllers);

/// <summary>Boxes that somebody has to go and look at.</summary>
internal static class BoxCheckPart
{
    /// <summary>How many sheets after a change of the clocks still remind of boxes that nobody has verified.</summary>
    private const int DaysReminded = 7;

    public static IReadOnlyList<BoxToVerify> ToVerify(AdviceContext context, IReadOnlyList<LogEntry> log) =>
    [
        .. PowerLosses.Unverified(context.Site.Clock, context.Site.Controllers.OrderBy(c => c.Route), log).Select(box => new BoxToVerify(box, [.. context.Programs
            .Where(p => string.Equals(p.Key.Controller, box.Controller, StringComparison.Ordinal))
            .Select(p => (p.Key, context.Settings.At(p.Key, context.AsOf).Setting))])),
    ];

    /// <summary>Null = no change is near, or every box is done.</summary>
    public static ClockChange? Clocks(AdviceContext context, IReadOnlyList<LogEntry> log)
    {
        var clock = context.Site.Clock;
        for (var days = 1; days > -DaysReminded; days--)
        {
            if (clock.ChangeOn(context.Date.AddDays(days)) is not { } change)
            {
                continue;
            }

            var isAhead = change.At > context.AsOf;
            List<string> boxes = [.. context.Site.Controllers
                .Where(c => !c.ClockStaysStandard && Runs(context, c) && (isAhead || !(PowerLosses.LastChecked(clock, c.Id, log) >= change.At)))
                .OrderBy(c => c.Route)
                .Select(c => c.Id)];
            return boxes.Count > 0 ? new ClockChange(change.At, change.By, isAhead, boxes) : null;
        }

        return null;
    }

    private static bool Runs(AdviceContext context, Controller controller) =>
        context.Season.At(controller.Id, context.AsOf).State is not (SeasonState.Closed or SeasonState.Drained);
}
