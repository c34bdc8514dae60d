using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>A box that lost its power and that nobody has verified since.</summary>
/// <param name="Controller">Which.</param>
/// <param name="Since">When power was lost, UTC; of several losses the first that nobody has verified it after. Only its date counts where nobody gave an hour.</param>
/// <param name="Back">When it came back, UTC; null = not said. Only its date counts where nobody gave an hour.</param>
/// <param name="Note">In the words of the person who entered it; may be empty.</param>
public sealed record UnverifiedBox(string Controller, DateTimeOffset Since, DateTimeOffset? Back, string Note)
{
    /// <summary>Somebody gave the hour of <see cref="Since"/>.</summary>
    public bool SinceHasHour { get; init; } = true;

    /// <summary>Somebody gave the hour of <see cref="Back"/>.</summary>
    public bool BackHasHour { get; init; } = true;

    /// <summary>When it was `checked` after the loss, but before its power was back, UTC: that does not count; null = it was not.</summary>
    public DateTimeOffset? CheckedEarly { get; init; }
}

/// <summary>
/// Without power a box may lose its clock, its programs and its percentage. `power` of the box or the site puts it on the list, `checked`
/// of either, from when the power was back, takes it off.
/// </summary>
public static class PowerLosses
{
    /// <summary>Boxes to verify, in the order given.</summary>
    public static IReadOnlyList<UnverifiedBox> Unverified(SiteClock clock, IEnumerable<Controller> controllers, IReadOnlyList<LogEntry> log)
    {
        var losses = log.Where(e => e.Kind == LogKind.Power).Select(e => (Entry: e, Since: e.Time.Begin(clock))).OrderBy(l => l.Since).ToList();
        var boxes = new List<UnverifiedBox>();
        foreach (var controller in losses.Count > 0 ? controllers : [])
        {
            var verified = LastChecked(clock, controller.Id, log);
            var open = losses.Where(l => l.Entry.Where.IsOfBox(controller.Id) && !(verified >= (l.Entry.Until?.Begin(clock) ?? l.Since))).ToList();
            if (open.Count > 0)
            {
                var (first, last) = (open[0], open[^1]);
                boxes.Add(new UnverifiedBox(controller.Id, first.Since, last.Entry.Until?.Begin(clock), string.Join("; ", open.Select(l => l.Entry.Note).Where(n => n.Length > 0)))
                {
                    SinceHasHour = first.Entry.Time.Clock is not null,
                    BackHasHour = last.Entry.Until?.Clock is not null,
                    CheckedEarly = verified >= first.Since ? verified : null,
                });
            }
        }

        return boxes;
    }

    /// <summary>When somebody last verified a box, UTC; null = nobody did.</summary>
    public static DateTimeOffset? LastChecked(SiteClock clock, string controller, IReadOnlyList<LogEntry> log) =>
        log.Where(e => e.Kind == LogKind.Checked && e.Where.IsOfBox(controller)).Select(e => (DateTimeOffset?)e.Time.Instant(clock)).Max();
}
