using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>Parts 5, 6 and 9 of the sheet: the driest and the wettest ground, and moisture by area.</summary>
internal static class GroundPart
{
    private const int MostListed = 8;
    private const int WetDays = 3;

    /// <summary>Days of moisture by area; no part of the sheet asks for whole zone days of more.</summary>
    internal const int ChartDays = 14;

    /// <summary>Less than this drained or run off in three days is not worth a caution, mm.</summary>
    private const double WorthACautionMm = 5;

    /// <summary>
    /// Ground that goes past its allowable depletion today, with the rain so far and what runs before the round is done, or that its program leaves past it, each with the
    /// depth to hose (<see cref="HoseDepth"/>); ground where that is not worth the hose is left out. Neediest first.
    /// </summary>
    /// <param name="context">The morning.</param>
    /// <param name="programs">What is advised.</param>
    /// <param name="depletionMm">Of every zone at 00:00 of the sheet's date; the drier one where two are possible.</param>
    /// <param name="ifDoneMm">The same had every unanswered round been done; null = everything is answered.</param>
    /// <param name="known">How sure each zone's figure is.</param>
    /// <param name="before">What to know before it is hosed.</param>
    public static IReadOnlyList<DryZone> Driest(
        AdviceContext context, IReadOnlyList<ProgramAdvice> programs, IReadOnlyDictionary<StationKey, double> depletionMm, IReadOnlyDictionary<StationKey, double>? ifDoneMm, GroundKnowledge known, BeforeHose before)
    {
        var left = programs.SelectMany(p => p.Zones.Select(z => (Program: p, Zone: z))).ToLookup(x => x.Zone.Station);
        var dry = new List<DryZone>();
        var hose = new HoseDepth(context, programs);
        foreach (var zone in context.Zones.Where(z => !z.Station.Area.ByHand))
        {
            var mine = left[zone.Station.Key].ToList();
            var missing = depletionMm[zone.Station.Key];
            var beyondToday = hose.TonightMm(zone, missing) - zone.AllowableMm;

            // A program that nobody judged today, or that must not run, does not say that the ground is served.
            var judged = mine.FindAll(x => x.Zone.Percent is not null && x.Program.Advice != AdviceKind.Off);
            var leftShort = judged.Select(x => x.Zone.ShortMm).DefaultIfEmpty().Min();
            var setAside = mine.Find(x => x.Zone.SetAside);
            if (beyondToday <= 0 && leftShort <= 0 && setAside.Zone is null)
            {
                continue;
            }

            var isServed = judged.Count > 0 && leftShort <= 0 && setAside.Zone is null;
            var wanted = hose.Mm(zone, missing, isServed);
            if (wanted < HoseDepth.LeastMm)
            {
                continue;
            }

            var why = beyondToday > 0 && hose.NowMm(zone, missing) > zone.AllowableMm ? new Phrase("is past the allowable")
                : beyondToday > 0 ? new Phrase("goes past the allowable today")
                : setAside.Zone is not null ? $"needs {Words.Percent(Math.Round(setAside.Zone.Percent ?? 0))}, far more than the rest of its program"
                : new Phrase("its program leaves it past the allowable before a later start");
            dry.Add(new DryZone(zone.Station.Key, zone.Station.Label, zone.Station.Area.Name, missing, zone.AllowableMm, wanted, zone.Station.GroundM2 * wanted, why)
            {
                Sure = known.Of(zone),
                BeforeHose = before.Of(zone.Station),
                OtherWay = ifDoneMm is null ? null : OtherWayOf(hose, zone, context.DepletionMm[zone.Station.Key], ifDoneMm[zone.Station.Key], isServed, wanted),
            });
        }

        return [.. dry.OrderByDescending(d => d.DepletionMm / d.AllowableMm)];
    }

    /// <summary>Null where it makes no difference that is worth the hose.</summary>
    private static OtherWay? OtherWayOf(HoseDepth hose, ZonePlan zone, double loggedMm, double ifDoneMm, bool isServed, double wantedMm)
    {
        if (Math.Abs(loggedMm - ifDoneMm) < HoseDepth.LeastMm)
        {
            return null;
        }

        // Ground that stays within its allowable depletion today needs no hose, whatever room it has.
        var wetter = Math.Min(loggedMm, ifDoneMm);
        var other = hose.TonightMm(zone, wetter) <= zone.AllowableMm ? 0 : Math.Max(0, hose.Mm(zone, wetter, isServed));
        return wantedMm - other < HoseDepth.LeastMm ? null : new OtherWay(IsIfDone: ifDoneMm < loggedMm, other < HoseDepth.LeastMm ? 0 : other);
    }

    /// <summary>Ground from which most drained or ran off in three days, the wettest first.</summary>
    /// <param name="context">The morning.</param>
    /// <param name="days">The balance.</param>
    /// <param name="driest">Ground that is listed for the hose is no wet ground.</param>
    public static IReadOnlyList<WetZone> Wettest(AdviceContext context, IReadOnlyList<ZoneDay> days, IReadOnlyList<DryZone> driest)
    {
        var hosed = driest.Select(d => d.Station).ToHashSet();
        var from = context.Date.AddDays(-WetDays);
        var sums = days.Where(d => d.Date >= from).GroupBy(d => d.Station).ToDictionary(
            g => g.Key,
            g => (Drained: g.Sum(d => d.DrainageMm), RanOff: g.Sum(d => d.RunoffMm + d.IrrigationRunoffMm)));
        return [.. context.Zones
            .Where(z => sums.ContainsKey(z.Station.Key))
            .Select(z => new WetZone(z.Station.Key, z.Station.Label, z.Station.Area.Name, sums[z.Station.Key].Drained, sums[z.Station.Key].RanOff, context.DepletionMm[z.Station.Key]))
            .Where(w => w.DrainedMm + w.RanOffMm >= WorthACautionMm && !hosed.Contains(w.Station))
            .OrderByDescending(w => w.DrainedMm + w.RanOffMm)
            .Take(MostListed)];
    }

    public static IReadOnlyList<AreaMoisture> Areas(AdviceContext context, IReadOnlyList<ZoneDay> days)
    {
        var from = context.Date.AddDays(-ChartDays);
        var ground = context.Site.Stations.ToDictionary(s => s.Key, s => s.GroundM2 ?? 1);
        List<Area> areas = [.. context.Site.Areas.Where(a => context.Site.Stations.Any(s => ReferenceEquals(s.Area, a)))];
        var sums = areas.ToDictionary(a => a.Name, _ => new AreaSum[ChartDays], StringComparer.Ordinal);
        foreach (var day in days)
        {
            if (day.Date >= from && sums.TryGetValue(day.Area, out var area))
            {
                area[day.Date.DayNumber - from.DayNumber].Add(day, ground.GetValueOrDefault(day.Station, 1));
            }
        }

        return [.. areas.Select(area => new AreaMoisture(
            area.Name,
            area.AllowableDepletionMm,
            area.TotalAvailableWaterMm,
            [.. sums[area.Name].Select((sum, i) => sum.Mean(from.AddDays(i))).OfType<AreaDay>()]))];
    }

    /// <summary>Base minutes to look at.</summary>
    public static IReadOnlyList<Phrase> Pointers(IReadOnlyList<ProgramAdvice> programs) =>
        [.. programs.SelectMany(p => p.Chain.Where(r => r.Code is "too-wet" or "cycles").Select(r => Phrase.Of($"{(p.Name.Length > 0 ? $"{p.Name} ({p.Key})" : p.Key.ToString())}: {r.Words}")))];

    /// <summary>One day of an area's zones, added up by ground.</summary>
    private struct AreaSum
    {
        private double _whole;
        private double _depletion;
        private double _rain;
        private double _water;
        private double _drainage;
        private bool _rainIsUnknown;

        public void Add(ZoneDay day, double ground)
        {
            _whole += ground;
            _depletion += day.DepletionMm * ground;
            _rain += (day.RainMm ?? 0) * ground;
            _water += (day.IrrigationMm + day.HoseMm) * ground;
            _drainage += day.DrainageMm * ground;
            _rainIsUnknown |= day.RainMm is null;
        }

        /// <summary>Null = there is no zone.</summary>
        public readonly AreaDay? Mean(DateOnly date) => _whole > 0
            ? new AreaDay(date, _depletion / _whole, _rainIsUnknown ? null : _rain / _whole, _water / _whole, _drainage / _whole)
            : null;
    }
}
