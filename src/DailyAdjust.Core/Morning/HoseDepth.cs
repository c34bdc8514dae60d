using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>
/// How much the hose is to bring to dry ground. Never more than the ground can take when the hose comes: its depletion at the hour by which the round is done, with
/// the rain so far and everything that runs before it, and with what turf has drawn by then. Beyond that:
/// where nothing runs on it before the next round is done, what lacks at the day's end, less the room that is left for rain;
/// where tonight's start brings enough (its program was judged and leaves it within its allowable depletion), only what lies beyond the allowable just before that start;
/// where it brings something but not enough, the larger of that and of what lacks at the day's end after that water. Doubt goes to the dry side: what is hosed in vain drains.
/// </summary>
/// <param name="context">The morning.</param>
/// <param name="programs">What is advised.</param>
internal sealed class HoseDepth(AdviceContext context, IReadOnlyList<ProgramAdvice> programs)
{
    /// <summary>Less is not worth taking the hose for, mm: a gauge in hundredths of an inch shows two of them. Source: common practice.</summary>
    public const double LeastMm = 0.5;

    private readonly Dictionary<ProgramKey, ProgramAdvice> _advice = programs.ToDictionary(p => p.Key);

    /// <summary>Depletion at the as-of instant, mm.</summary>
    /// <param name="zone">The zone.</param>
    /// <param name="depletionMm">At 00:00 of the sheet's date.</param>
    public double NowMm(ZonePlan zone, double depletionMm) => At(zone, depletionMm, ShareBy(context.AsOf), context.AsOf.AddTicks(1)).DepletionMm;

    /// <summary>Depletion at the day's end with what came in by now and starts that run before the round is done, and without tonight's; mm.</summary>
    /// <param name="zone">The zone.</param>
    /// <param name="depletionMm">At 00:00 of the sheet's date.</param>
    public double TonightMm(ZonePlan zone, double depletionMm) => At(zone, depletionMm, 1, context.RoundDone).DepletionMm;

    /// <summary>What the hose is to bring, mm; may be 0 or less.</summary>
    /// <param name="zone">The zone.</param>
    /// <param name="depletionMm">At 00:00 of the sheet's date.</param>
    /// <param name="isServed">What runs on it before the next round is done leaves it within its allowable depletion.</param>
    public double Mm(ZonePlan zone, double depletionMm, bool isServed)
    {
        var dayEnds = At(zone, depletionMm, 1, context.RoundDone);
        var room = At(zone, depletionMm, ShareBy(context.RoundDone), context.RoundDone).DepletionMm;
        var lacks = dayEnds.DepletionMm - (zone.Station.Area.LeaveEmpty * zone.AllowableMm);
        var night = Night(zone);
        if (night.Count > 0)
        {
            var first = night.Min(n => n.At);
            var beyond = Before(zone, depletionMm, dayEnds, first) - zone.AllowableMm;
            lacks = isServed ? beyond : Math.Max(beyond, lacks - night.Sum(n => n.Mm));
        }

        return Math.Min(lacks, room);
    }

    /// <summary>Depletion that the night's first start meets, mm.</summary>
    private double Before(ZonePlan zone, double depletionMm, RootZone dayEnds, DateTimeOffset first)
    {
        var date = context.Site.Clock.DateOf(first);
        if (date == context.Date)
        {
            return At(zone, depletionMm, ShareBy(first), context.RoundDone).DepletionMm;
        }

        dayEnds.BeginDay();
        dayEnds.Draw(context.DemandMm(zone, date) * context.Day(date).ShareBy(first));
        return dayEnds.DepletionMm;
    }

    /// <summary>The root zone once a share of the day's reference ET is drawn, with what is known to have come in and starts that lie before an instant.</summary>
    private RootZone At(ZonePlan zone, double depletionMm, double share, DateTimeOffset before)
    {
        var soil = new RootZone(zone.TotalAvailableMm, zone.AllowableMm, depletionMm);
        ZoneDaySums.Run(ref soil, WaterSinceMidnight.Of(context, zone, before), context.DemandMm(zone, context.Date), share);
        return soil;
    }

    private double ShareBy(DateTimeOffset at) => context.ShareDrawn(context.Date, context.Day(context.Date).ShareBy(at));

    /// <summary>What runs on a zone from this round to the next by what is advised: each start's net water, mm.</summary>
    private List<(DateTimeOffset At, double Mm)> Night(ZonePlan zone)
    {
        var ends = context.Site.RoundDone(context.Date.AddDays(1));
        var night = new List<(DateTimeOffset At, double Mm)>();
        foreach (var program in zone.Programs.Select(p => p.Program))
        {
            var advice = _advice[program.Key];
            var percent = NightCuts.PercentAfter(advice);
            if (percent <= 0 || advice.StationsOut.Any(o => o.Stations.Contains(zone.Station.Key)))
            {
                continue;
            }

            night.AddRange(context.StartsOf(program, context.RoundDone)
                .TakeWhile(s => s.Start.At < ends)
                .Where(s => !advice.TakenOut.Any(t => t.At == s.Start.At))
                .Select(s => (s.Start.At, zone.Net.DepthMm(s.Due(program, percent).Minutes(zone.Station.BaseMinutes[program.Key.Program])))));
        }

        return night.FindAll(n => n.Mm > 0);
    }
}
