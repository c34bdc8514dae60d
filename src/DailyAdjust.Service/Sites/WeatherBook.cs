using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Service.Sites;

/// <summary>
/// Finished days of weather, from all that has arrived. Stored ones hold until an input touches them; others are computed.
/// </summary>
public static class WeatherBook
{
    /// <summary>The last day of which the readings show the end; null = no reading yet.</summary>
    public static DateOnly? LastFinished(OpenSite site) =>
        ReadingsBook.LastDay(site) is { } last && site.Versions.Count > 0
            ? ReadingsBook.Between(site, last, last).Values.Any(r => r.Count > 0 && r[^1].End >= site.Newest.Clock.DayEnd(last)) ? last : last.AddDays(-1)
            : null;

    /// <summary>Every day from the site's start (or a later first day) through a last one.</summary>
    public static IReadOnlyList<WeatherDay> Through(OpenSite site, DateOnly last, DateOnly? first = null)
    {
        var (stored, computed) = StoredAndComputed(site, last, first);
        return [.. stored, .. computed];
    }

    /// <summary>Stores the days through a last one that are not stored yet.</summary>
    public static void Keep(OpenSite site, DateOnly last)
    {
        var computed = StoredAndComputed(site, last, null).Computed;
        if (computed.Count > 0)
        {
            site.Ledger.InOneStep(() =>
            {
                foreach (var day in computed)
                {
                    site.Ledger.Weather.Put(day, HashOf(site, day.Date));
                }
            });
        }
    }

    /// <summary>Computes days; nothing that ends or was said after the instant, or arrived after the input, is used.</summary>
    public static IReadOnlyList<WeatherDay> Compute(
        OpenSite site,
        IReadOnlyList<SiteVersion> versions,
        DateOnly from,
        DateOnly through,
        IReadOnlyList<WeatherDay> before,
        IReadOnlyList<LogEntry> log,
        DateTimeOffset asOf,
        long upTo) =>
        from > through ? [] : WeatherDays.Compute(new WeatherDayInputs
        {
            Versions = versions,
            From = from,
            Through = through,
            Readings = ReadingsBook.Between(site, from.AddDays(-2), through.AddDays(1), upTo),
            Log = log,
            Before = before.Count > LookBack.Days ? [.. before.Skip(before.Count - LookBack.Days)] : before,
            AsOf = asOf,
        });

    /// <summary>The days before a state that a rain switch looks back at; none where no box has one, or the balance begins.</summary>
    public static IReadOnlyList<WeatherDay> BeforeState(OpenSite site, IReadOnlyList<SiteVersion> versions, SoilState? state)
    {
        var start = versions[0].Site.Start;
        return state is null || state.Date <= start || versions.All(v => v.Site.Controllers.All(c => c.RainSwitch is null))
            ? []
            : Through(site, state.Date.AddDays(-1), state.Date.AddDays(-LookBack.Days));
    }

    /// <summary>
    /// Derives stored days again that new input touches: a day looks at itself, at 3 hours after its end and at the 45 days before it.
    /// Soil states are forgotten from the first day that really differs.
    /// </summary>
    public static void Touch(OpenSite site, DateOnly first, DateOnly last)
    {
        var start = site.Versions[0].Site.Start;
        var from = first.AddDays(-1) > start ? first.AddDays(-1) : start;
        var stored = site.Ledger.Weather.Between(from, last.AddDays(LookBack.Days));
        if (stored.Count == 0)
        {
            return;
        }

        var through = stored[^1].Day.Date;
        var before = Before(site, from.AddDays(-LookBack.Days) is var back && back > start ? back : start, from);
        DateOnly? differs = null;
        foreach (var day in Compute(site, site.Versions, from, through, before, site.Ledger.Logbook.Effective(), DateTimeOffset.MaxValue, long.MaxValue))
        {
            if (site.Ledger.Weather.Put(day, HashOf(site, day.Date)))
            {
                differs ??= day.Date;
            }
        }

        if (differs is { } changed)
        {
            site.Ledger.ForgetBalanceFrom(changed);
        }
    }

    /// <summary>What a stored day rests on beside its readings and entries (those derive it again when they change).</summary>
    public static string HashOf(OpenSite site, DateOnly day)
    {
        var text = site.Texts.LastOrDefault(t => t.From <= day) ?? site.Texts[0];
        return $"{CalculationVersions.Calculation}|{CalculationVersions.TimeZones}|{text.Sha}";
    }

    private static (IReadOnlyList<WeatherDay> Stored, IReadOnlyList<WeatherDay> Computed) StoredAndComputed(OpenSite site, DateOnly last, DateOnly? first)
    {
        var start = site.Versions[0].Site.Start;
        var begin = first is { } wanted && wanted > start ? wanted : start;
        var stored = new List<WeatherDay>();
        foreach (var (day, hash) in site.Ledger.Weather.Between(begin, last))
        {
            // The first gap or outdated day ends what can be used.
            if (day.Date != begin.AddDays(stored.Count) || !string.Equals(hash, HashOf(site, day.Date), StringComparison.Ordinal))
            {
                break;
            }

            stored.Add(day);
        }

        var next = begin.AddDays(stored.Count);
        if (next > last)
        {
            return (stored, []);
        }

        var back = next.AddDays(-LookBack.Days);
        var before = back >= begin || begin == start ? stored : Before(site, back > start ? back : start, next);
        return (stored, Compute(site, site.Versions, next, last, before, site.Ledger.Logbook.Effective(), DateTimeOffset.MaxValue, long.MaxValue));
    }

    private static IReadOnlyList<WeatherDay> Before(OpenSite site, DateOnly from, DateOnly day) =>
        [.. site.Ledger.Weather.Between(from, day.AddDays(-1)).Select(s => s.Day)];
}
