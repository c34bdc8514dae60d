using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>Which clock or stamp in site.yaml would put a file's sun right.</summary>
internal static class ClockSettings
{
    /// <summary>What clouds that favour one half of the day, and a day cut at midnight, can hide, minutes.</summary>
    private const double ToleranceMinutes = 35;

    /// <param name="minutes">How much the file's sun is late (early: below 0).</param>
    public static string Fitting(Site site, WeatherSource source, DateOnly date, double minutes)
    {
        if (source.Time.Column.Length == 0)
        {
            return "the clock of its file is not what its format says";
        }

        var candidates =
            from stamp in Enum.GetValues<StampMeaning>()
            from clock in Enum.GetValues<StampClock>()
            let changes = (clock == source.Time.Clock ? 0 : 1) + (stamp == source.Time.Stamp ? 0 : 1)
            where changes > 0 && Math.Abs(minutes + ShiftMinutes(site, source, date, clock, stamp)) <= ToleranceMinutes
            select (Changes: changes, Text: Text(source, clock, stamp));
        var fitting = candidates.ToList();
        var simplest = fitting.Where(c => c.Changes == fitting.Min(f => f.Changes)).Select(c => c.Text).ToList();
        return simplest.Count == 0
            ? "no clock setting fits; set the logger's own clock"
            : $"{string.Join(" / ", simplest)} in site.yaml would fit, or the logger's own clock is off";
    }

    /// <summary>How much later the intervals would lie.</summary>
    private static double ShiftMinutes(Site site, WeatherSource source, DateOnly date, StampClock clock, StampMeaning stamp)
    {
        var noon = new TimeOnly(12, 0);
        var local = site.Clock.OffsetAt(site.Clock.ToInstant(date, noon));
        var standard = date.ToDateTime(noon) - site.Clock.ToInstantStandard(date, noon).UtcDateTime;
        TimeSpan Offset(StampClock c) => c switch { StampClock.Local => local, StampClock.Standard => standard, _ => TimeSpan.Zero };
        var byStamp = stamp == source.Time.Stamp ? TimeSpan.Zero : stamp == StampMeaning.Start ? source.Interval : -source.Interval;
        return (Offset(source.Time.Clock) - Offset(clock) + byStamp).TotalMinutes;
    }

    private static string Text(WeatherSource source, StampClock clock, StampMeaning stamp)
    {
        var byClock = clock == source.Time.Clock ? "" : clock switch { StampClock.Local => "clock: local", StampClock.Standard => "clock: standard", _ => "clock: utc" };
        var byStamp = stamp == source.Time.Stamp ? "" : stamp == StampMeaning.Start ? "stamp: start" : "stamp: end";
        return string.Join(", ", new[] { byClock, byStamp }.Where(t => t.Length > 0).Select(t => $"\"{t}\""));
    }
}
