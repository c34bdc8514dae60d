using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Water;

/// <summary>Water used against what the place may take.</summary>
internal static class LimitBooks
{
    private const double Tolerance = 1e-9;

    /// <summary>A meter's readings that lie so near to the ends of the year so far tell of it.</summary>
    private const int NearDays = 7;

    /// <param name="site">As it is on the last date.</param>
    /// <param name="balance">What the days were run on.</param>
    /// <param name="days">All that were run: the year's too, where they reach back so far.</param>
    /// <param name="from">The span's first date.</param>
    /// <param name="to">Its last.</param>
    public static IReadOnlyList<LimitUse> Of(Site site, BalanceInputs balance, IReadOnlyList<DayWater> days, DateOnly from, DateOnly to)
    {
        var volumes = OfVolumes(site, balance.Log, days, from, to);
        return site.WaterLimits.RateLPerMin is { } rate ? [.. volumes, Rate(site, balance, rate, from, to)] : volumes;
    }

    /// <summary>The same without the rate: that asks for every night's runs.</summary>
    public static IReadOnlyList<LimitUse> OfVolumes(Site site, IReadOnlyList<LogEntry> log, IReadOnlyList<DayWater> days, DateOnly from, DateOnly to)
    {
        var limits = site.WaterLimits;
        var year = limits.YearOf(to);
        List<LimitUse?> uses =
        [
            Year(LimitKind.Allotment, limits.AllotmentL),
            Most(LimitKind.Day, limits.DayL, date => date),
            Most(LimitKind.Month, limits.MonthL, date => new(date.Year, date.Month, 1)),
            Year(LimitKind.Year, limits.YearL),
        ];
        return [.. uses.OfType<LimitUse>()];

        LimitUse? Year(LimitKind kind, double? limit)
        {
            if (limit is not { } most)
            {
                return null;
            }

            // A meter that was first read later, or last read long ago, tells of a part only.
            var known = days.Count > 0 && days[0].Date > year ? days[0].Date : year;
            var metered = Meters.Between(log, year, to) is { } told && Near(told.From, known) && Near(told.To, to) ? told : null;
            var used = metered?.Litres ?? days.Where(d => d.Date >= year).Sum(d => d.EstimatedL);
            return new LimitUse(kind, most, known, used, metered is not null, used > most ? 1 : 0);
        }

        // Meters are read now and then: for a day or a month the estimate is what there is for all of them.
        LimitUse? Most(LimitKind kind, double? limit, Func<DateOnly, DateOnly> spanOf)
        {
            if (limit is not { } most)
            {
                return null;
            }

            var sums = days.GroupBy(d => spanOf(d.Date)).Where(g => g.Max(d => d.Date) >= from).Select(g => (From: g.Key, Litres: g.Sum(d => d.EstimatedL))).ToList();
            if (sums.Count == 0)
            {
                return null;
            }

            var worst = sums.MaxBy(s => s.Litres);
            return new LimitUse(kind, most, worst.From, worst.Litres, IsMetered: false, sums.Count(s => s.Litres > most));
        }
    }

    /// <summary>What the boxes ask at once by their settings; a night that failed is in it as if it had run.</summary>
    private static LimitUse Rate(Site site, BalanceInputs balance, double limit, DateOnly from, DateOnly to)
    {
        var settings = new SettingHistory(balance.Versions, balance.Log, balance.Sheets);
        var pump = new PumpLoad(site with { PumpCapacityLPerMin = limit }, []);
        var (most, on, over) = (0.0, from, new HashSet<DateOnly>());
        foreach (var (version, begin, end) in Spans(balance.Versions, from, to))
        {
            var runs = new NightRuns(version).Between(
                new GrowIns(version, balance.Log), ZonePlan.AllPrograms(version), version.Clock.DayStart(begin), version.Clock.DayEnd(end), (key, start) => settings.At(key, start.Start.At).Setting.Percent);
            foreach (var step in pump.Flow(runs))
            {
                var date = version.Clock.DateOf(step.From);
                (most, on) = step.LPerMin > most ? (step.LPerMin, date) : (most, on);
                if (step.LPerMin > limit + Tolerance)
                {
                    over.Add(date);
                }
            }
        }

        return new LimitUse(LimitKind.Rate, limit, on, most, IsMetered: false, over.Count);
    }

    private static bool Near(DateOnly reading, DateOnly end) => Math.Abs(reading.DayNumber - end.DayNumber) <= NearDays;

    /// <summary>The parts of a span in which one version of the site holds, in pieces of no more than a year: no program's starts are looked for further ahead.</summary>
    private static IEnumerable<(Site Site, DateOnly Begin, DateOnly End)> Spans(IReadOnlyList<SiteVersion> versions, DateOnly from, DateOnly to)
    {
        for (var i = 0; i < versions.Count; i++)
        {
            var begin = i == 0 || versions[i].From < from ? from : versions[i].From;
            var end = i + 1 < versions.Count && versions[i + 1].From <= to ? versions[i + 1].From.AddDays(-1) : to;
            for (; begin <= end; begin = begin.AddYears(1))
            {
                var last = begin.AddYears(1).AddDays(-1);
                yield return (versions[i].Site, begin, last < end ? last : end);
            }
        }
    }
}
