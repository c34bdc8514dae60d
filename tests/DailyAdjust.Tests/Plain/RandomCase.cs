using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Tests.Plain;

/// <summary>An invented site with weather and logbook of some days.</summary>
internal sealed record RandomCase(IReadOnlyList<SiteVersion> Versions, IReadOnlyList<WeatherDay> Weather, IReadOnlyList<LogEntry> Log, IReadOnlyList<IssuedSheet> Sheets)
{
    public Site Site => Versions[0].Site;

    public BalanceInputs Balance => new() { Versions = Versions, Weather = Weather, Log = Log, Sheets = Sheets };

    public static RandomCase Of(int seed) => Thrown(new Dice((ulong)seed));

    public static RandomCase Thrown(Dice dice)
    {
        var site = RandomSites.Build(dice);
        List<SiteVersion> versions = [new(site.Start, site)];
        var days = dice.Whole(9, 16);
        if (dice.Chance(0.3))
        {
            versions.Add(new(site.Start.AddDays(dice.Whole(2, 7)), RandomSites.Change(dice, site)));
        }

        List<WeatherDay> weather = [.. Enumerable.Range(0, days).Select(i => RandomWeather.Day(dice, site, site.Start.AddDays(i)))];
        var sheets = RandomLog.Sheets(dice, site, days);
        return new(versions, weather, RandomLog.Entries(dice, site, days, sheets), sheets);
    }

    /// <summary>A morning of the case: what had arrived by its report hour, no sheet ever issued.</summary>
    public MorningInputs Morning(DateOnly date)
    {
        var clock = Site.Clock;
        var asOf = clock.ToInstant(date, Site.Report.At[0]);
        var today = Weather.Single(w => w.Date == date);
        return new MorningInputs
        {
            Versions = [.. Versions.Where(v => v.From <= date)],
            Date = date,
            AsOf = asOf,
            Weather = [.. Weather.Where(w => w.Date < date).Select(w => w with { Rain = [.. w.Rain.Select(Known)] })],
            RainSinceMidnight = [.. today.Rain.Select(g =>
            {
                IReadOnlyList<RainFall> falls = [.. g.Falls.Where(f => g.Gauge.Is("hourly") && f.At <= asOf)];
                return g with { Falls = falls, RainMm = falls.Sum(f => f.Mm), Basis = RainBasis.Measured };
            })],
            NewestReadingEnd = asOf.AddHours(-1),
            Log = [.. Log.Where(e => e.Kind != LogKind.Round && e.Time.Instant(clock) <= asOf)],
        };

        // Unknown rain limits numbers; that rule has tests of its own.
        static GaugeDay Known(GaugeDay g) => g.RainMm is null ? g with { RainMm = 0, Basis = RainBasis.Logbook, MeasuredPartMm = 0 } : g;
    }
}
