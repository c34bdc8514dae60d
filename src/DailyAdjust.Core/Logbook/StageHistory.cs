namespace DailyAdjust.Core.Logbook;

/// <summary>A stage of the drought plan that somebody put in force.</summary>
/// <param name="Name">As site.yaml calls it.</param>
/// <param name="First">The first date on which it holds.</param>
/// <param name="Last">The last date, included; null = until further notice.</param>
/// <param name="Entry">Who said so, and why.</param>
public sealed record StageInForce(string Name, DateOnly First, DateOnly? Last, LogEntry Entry)
{
    public bool HoldsOn(DateOnly date) => date >= First && (Last is null || date <= Last);
}

/// <summary>Stages from `stage` entries: one at a time, each until its end or the next entry; `none` ends it.</summary>
public static class StageHistory
{
    public const string None = "none";

    public static IReadOnlyList<StageInForce> Of(IReadOnlyList<LogEntry> log)
    {
        var entries = log.Where(e => e.Kind == LogKind.Stage).OrderBy(e => e.Time).ToList();
        var stages = new List<StageInForce>();
        for (var i = 0; i < entries.Count; i++)
        {
            var entry = entries[i];
            if (string.Equals(entry.Text, None, StringComparison.Ordinal))
            {
                continue;
            }

            var next = i + 1 < entries.Count ? entries[i + 1].Time.Date.AddDays(-1) : (DateOnly?)null;
            var last = entry.Until?.Date is { } until && (next is null || until < next) ? until : next;
            if (last is null || last >= entry.Time.Date)
            {
                stages.Add(new StageInForce(entry.Text, entry.Time.Date, last, entry));
            }
        }

        return stages;
    }
}
