using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>A program that must not run and stands switched on: going there is no question of water.</summary>
/// <param name="Why">A plain clause.</param>
/// <param name="Until">The last date; null = open.</param>
public sealed record SwitchOff(ProgramKey Program, Phrase Why, DateOnly? Until);

/// <summary>A box at which something is to be done today, and what leaving it until its next visit costs.</summary>
/// <param name="Controller">The box.</param>
/// <param name="Programs">What would be changed there, the costliest first.</param>
/// <param name="Orders">What must be switched off there, in the controller's order.</param>
public sealed record BoxVisit(Controller Controller, IReadOnlyList<VisitWorth> Programs, IReadOnlyList<SwitchOff> Orders)
{
    /// <summary>The sum of its programs' shares of allowable depletion, 0 or more.</summary>
    public double Cost => Programs.Sum(p => p.Cost);

    /// <summary>
    /// Boxes in the order in which they are worth opening: first those with an order to carry out, then by cost, the largest first; equals in walking order. What
    /// a box costs does not hang on whether others are opened, so the first N are those N whose being left undone would cost most, and the rest is the
    /// cheapest rest that N visits can leave.
    /// </summary>
    /// <param name="site">Knows the boxes.</param>
    /// <param name="worth">Programs that would be changed, the costliest first.</param>
    /// <param name="orders">Programs that must be switched off.</param>
    /// <returns>Boxes with neither are left out.</returns>
    public static IReadOnlyList<BoxVisit> InOrder(Site site, IReadOnlyList<VisitWorth> worth, IReadOnlyList<SwitchOff> orders) =>
    [
        .. site.Controllers
            .Select(c => new BoxVisit(c, [.. worth.Where(w => IsOf(w.Program, c))], [.. orders.Where(o => IsOf(o.Program, c))]))
            .Where(b => b.Programs.Count + b.Orders.Count > 0)
            .OrderByDescending(b => b.Orders.Count > 0)
            .ThenByDescending(b => b.Cost)
            .ThenBy(b => b.Controller.Route),
    ];

    private static bool IsOf(ProgramKey program, Controller controller) => string.Equals(program.Controller, controller.Id, StringComparison.Ordinal);
}
