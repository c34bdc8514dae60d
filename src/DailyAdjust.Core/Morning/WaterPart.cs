using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Water;

namespace DailyAdjust.Core.Morning;

/// <summary>Part 12 of the sheet: water used, estimated from minutes and flow, and metered, each by itself.</summary>
internal static class WaterPart
{
    public static WaterUsed Of(AdviceContext context, MorningInputs inputs, IReadOnlyList<ZoneDay> zoneDays, IReadOnlyList<LogEntry> log)
    {
        var flow = context.Site.Stations.ToDictionary(s => s.Key, s => s.FlowLPerMin);
        var litres = zoneDays.GroupBy(d => d.Date).ToDictionary(g => g.Key, g => g.Sum(d => d.MinutesRun * (flow.GetValueOrDefault(d.Station) ?? 0)));
        List<DayWater> days = [.. inputs.Weather.Where(w => litres.ContainsKey(w.Date)).Select(w => DayWater.Of(w, litres[w.Date]))];
        var month = new DateOnly(context.Date.Year, context.Date.Month, 1);
        var year = new DateOnly(context.Date.Year, 1, 1);
        var yesterday = context.Date.AddDays(-1);
        return new WaterUsed(
            litres.GetValueOrDefault(yesterday),
            days.Where(d => d.Date >= month).Sum(d => d.EstimatedL),
            days.Where(d => d.Date >= year).Sum(d => d.EstimatedL),
            Meters.Between(log, month, context.Date)?.Litres,
            context.Site.Stations.Count(s => s.FlowLPerMin is null))
        {
            SeasonFrom = days.Count == 0 ? null : days[0].Date > year ? days[0].Date : year,
            Month = [.. days.Where(d => d.Date >= month)],
            YearBefore = inputs.WaterYearBefore,
            Limits = days.Count == 0 ? [] : LimitBooks.OfVolumes(context.Site, log, days, month, days[^1].Date),
        };
    }
}
