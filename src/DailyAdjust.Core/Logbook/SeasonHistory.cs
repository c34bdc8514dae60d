using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>Open, closed and drained, from `season` entries of the site or of one controller. Before the first it is open.</summary>
public sealed class SeasonHistory
{
    private readonly List<(DateTimeOffset From, Place Where, string State, string Note)> _changes;

    public SeasonHistory(SiteClock clock, IReadOnlyList<LogEntry> log) =>
        _changes = [.. log
            .Where(e => e.Kind == LogKind.Season)
            .Select(e => (From: e.Time.Instant(clock), e.Where, State: e.Text, e.Note))
            .OrderBy(c => c.From)];

    /// <summary>Whether the pipes are empty: nothing runs then whatever the dial says.</summary>
    public bool IsDrained(string controller, DateTimeOffset at) =>
        string.Equals(At(controller, at).State, "drained", StringComparison.Ordinal);

    /// <summary>The state at an instant: "open", "closed" or "drained", and since when.</summary>
    public (string State, DateTimeOffset? Since) At(string controller, DateTimeOffset at)
    {
        for (var i = _changes.Count - 1; i >= 0; i--)
        {
            var (from, where, state, _) = _changes[i];
            if (from <= at && (where.Kind == PlaceKind.Site
                || (where.Kind == PlaceKind.Controller && string.Equals(where.Name, controller, StringComparison.Ordinal))))
            {
                return (state, from);
            }
        }

        return ("open", null);
    }
}
