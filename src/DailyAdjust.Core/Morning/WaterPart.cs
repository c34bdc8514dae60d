using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Water;

namespace DailyAdjust.Core.Morning;

/// <summary>Part 12 of the sheet: water used, estimated from minutes and flow, and metered, each by itself.</summary>
internal static class WaterPart
{
    /// <param name="context">The morning.</param>
    /// <param name="inputs">It too.</param>
    /// <param name="balance">What was run.</param>
    /// <param name="litres">Of each of its days.</param>
    public static WaterUsed Of(AdviceContext context, MorningInputs inputs, BalanceInputs balance, IReadOnlyList<double> litres)
    {
        var log = balance.Log;
        List<DayWater> days = [.. inputs.WaterBefore, .. balance.Weather.Zip(litres, DayWater.Of)];
        var month = new DateOnly(context.Date.Year, context.Date.Month, 1);
        var year = new DateOnly(context.Date.Year, 1, 1);
        var yesterday = context.Date.AddDays(-1);
        DateOnly? season = days.Count == 0 ? null : days[0].Date > year ? days[0].Date : year;
        return new WaterUsed(
            days.Where(d => d.Date == yesterday).Sum(d => d.EstimatedL),
            days.Where(d => d.Date >= month).Sum(d => d.EstimatedL),
            days.Where(d => d.Date >= year).Sum(d => d.EstimatedL),
            context.Site.Stations.Count(s => s.FlowLPerMin is null))
        {
            SeasonFrom = season,
            MeteredMonth = Meters.Between(log, month, context.Date),
            MeteredSeason = Meters.Between(log, season ?? year, context.Date),
            AllotmentMonthL = AllotmentMonthL(context.Site.WaterLimits, month),
            Month = [.. days.Where(d => d.Date >= month)],
            YearBefore = inputs.WaterYearBefore,
            Limits = days.Count == 0 ? [] : LimitBooks.OfVolumes(context.Site, log, days, season!.Value, days[^1].Date),
        };
    }

    /// <summary>By days, for months differ in them.</summary>
    private static double? AllotmentMonthL(WaterLimits limits, DateOnly month)
    {
        var year = limits.YearOf(month);
        return limits.AllotmentL * (month.AddMonths(1).DayNumber - month.DayNumber) / (year.AddYears(1).DayNumber - year.DayNumber);
    }
}
