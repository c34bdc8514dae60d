using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>States of the season as the logbook spells them.</summary>
public static class SeasonState
{
    public const string Open = "open";

    /// <summary>Being shut down for the winter.</summary>
    public const string Closing = "closing";
    public const string Closed = "closed";

    /// <summary>The pipes are empty.</summary>
    public const string Drained = "drained";

    /// <summary>Being filled again.</summary>
    public const string Charging = "charging";

    public static IReadOnlyList<string> All { get; } = [Open, Closing, Closed, Drained, Charging];
}

/// <summary>Open, closing, closed, drained and charging, from `season` entries of the site or of one controller. Before the first it is open.</summary>
public sealed class SeasonHistory
{
    private readonly List<(DateTimeOffset From, Place Where, string State, string Note)> _changes;
    private readonly List<(DateTimeOffset At, LogEntry Entry)> _checked;

    public SeasonHistory(SiteClock clock, IReadOnlyList<LogEntry> log)
    {
        _changes = [.. log
            .Where(e => e.Kind == LogKind.Season)
            .Select(e => (From: e.Time.Instant(clock), e.Where, State: e.Text, e.Note))
            .OrderBy(c => c.From)];
        _checked = [.. log.Where(e => e.Kind == LogKind.Checked).Select(e => (At: e.Time.Instant(clock), Entry: e)).OrderBy(c => c.At)];
    }

    /// <summary>Whether the pipes are empty: nothing runs then whatever the dial says.</summary>
    public bool IsDrained(string controller, DateTimeOffset at) =>
        string.Equals(At(controller, at).State, SeasonState.Drained, StringComparison.Ordinal);

    public bool IsOpen(string controller, DateTimeOffset at) => IsOpen(At(controller, at).State);

    /// <summary>The state at an instant, and since when.</summary>
    public (string State, DateTimeOffset? Since) At(string controller, DateTimeOffset at)
    {
        for (var i = _changes.Count - 1; i >= 0; i--)
        {
            var (from, where, state, _) = _changes[i];
            if (from <= at && where.IsOfBox(controller))
            {
                return (state, from);
            }
        }

        return (SeasonState.Open, null);
    }

    /// <summary>Who last verified a box since its close-out (or its charging) began; null = nobody, or the season is open.</summary>
    public LogEntry? CheckedOff(string controller, DateTimeOffset at)
    {
        DateTimeOffset? since = null;
        var charging = false;
        foreach (var (from, _, state, _) in _changes.Where(c => c.From <= at && c.Where.IsOfBox(controller)))
        {
            var charges = string.Equals(state, SeasonState.Charging, StringComparison.Ordinal);
            since = IsOpen(state) ? null : charges != charging ? from : since ?? from;
            charging = charges;
        }

        return since is { } began ? _checked.LastOrDefault(c => c.At >= began && c.At <= at && c.Entry.Where.IsOfBox(controller)).Entry : null;
    }

    private static bool IsOpen(string state) => string.Equals(state, SeasonState.Open, StringComparison.Ordinal);
}
