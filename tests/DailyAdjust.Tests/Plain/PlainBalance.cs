using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Tests.Plain;

/// <summary>One zone's day: the columns of `balance --format csv`, and the depletion before it.</summary>
internal sealed record PlainZoneDay(
    DateOnly Date,
    StationKey Station,
    string Area,
    double EtoMm,
    double K,
    double Ks,
    double EtcMm,
    double? RainMm,
    double InterceptedMm,
    double RunoffMm,
    double IrrigationMm,
    double HoseMm,
    double DrainageMm,
    double ProbeMm,
    double DepletionBeforeMm,
    double DepletionMm,
    double RawMm,
    double TawMm);

/// <summary>The balance of all zones, day by day, as slow and plain as the text says it.</summary>
internal static class PlainBalance
{
    public static IReadOnlyList<PlainZoneDay> Run(BalanceInputs inputs)
    {
        var log = new PlainLog(inputs.Versions, inputs.Log, inputs.Sheets);
        var days = new List<PlainZoneDay>();
        var depletion = inputs.StartState?.DepletionMm.ToDictionary();
        foreach (var weather in inputs.Weather)
        {
            var site = log.SiteOn(weather.Date);
            depletion ??= site.Stations.ToDictionary(s => s.Key, s => StartDepletion(site, s));
            foreach (var station in site.Stations)
            {
                // A new station starts full; a root zone that has become smaller holds no more than it can.
                var before = Math.Min(depletion.GetValueOrDefault(station.Key), station.Area.TotalAvailableWaterMm);
                var day = Day(log, site, station, weather, before);
                days.Add(day);
                depletion[station.Key] = day.DepletionMm;
            }
        }

        return days;
    }

    public static double StartDepletion(Site site, Station station) => site.StartSoil switch
    {
        StartSoil.Allowable => station.Area.AllowableDepletionMm,
        StartSoil.Assumed => station.Area.AllowableDepletionMm / 2,
        _ => 0,
    };

    private static PlainZoneDay Day(PlainLog log, Site site, Station station, WeatherDay weather, double before)
    {
        var eto = weather.EtoMm!.Value;
        var k = PlainWater.Kc(station.Area, weather.Date) * station.Exposure;

        var gauge = weather.RainAt(station.Gauge);
        var rain = gauge.RainMm ?? 0;
        var intercepted = rain < (0.2 * eto) - PlainSoil.Same ? rain : 0;
        var runoff = PlainWater.Runoff(rain - intercepted, station.Area.Soil.CurveNumber);
        var reaches = rain > 0 ? (rain - intercepted - runoff) / rain : 0;

        List<PlainEvent> events =
        [
            .. gauge.RainMm is null ? [] : gauge.Falls.Select(f => new PlainEvent(f.At, PlainWhat.Rain, f.Mm * reaches)),
            .. Irrigation(log, site, station, weather.Date),
            .. log.ByHand(station, weather.Date),
        ];
        var trace = PlainSoil.Day(before, station.Area, eto * k, PlainSun.Of(site, weather.Date), events);
        return new(
            weather.Date,
            station.Key,
            station.Area.Name,
            eto,
            k,
            eto * k == 0 ? 1 : trace.Etc / (eto * k),
            trace.Etc,
            gauge.RainMm,
            intercepted,
            runoff,
            events.Where(e => e.What == PlainWhat.Irrigation).Sum(e => e.Mm),
            events.Where(e => e.What == PlainWhat.Hose).Sum(e => e.Mm),
            trace.Drained,
            trace.Probe,
            before,
            trace.End,
            station.Area.AllowableDepletionMm,
            station.Area.TotalAvailableWaterMm);
    }

    private static IEnumerable<PlainEvent> Irrigation(PlainLog log, Site site, Station station, DateOnly date)
    {
        var controller = site.Controllers.Single(c => c.Id.Is(station.Key.Controller));
        for (var i = 0; i < controller.Programs.Count; i++)
        {
            var program = controller.Programs[i];
            if (!station.BaseMinutes.TryGetValue(program.Id, out var minutes))
            {
                continue;
            }

            foreach (var start in PlainStart.InDay(site, controller, program, date))
            {
                yield return new(start.At, PlainWhat.Irrigation, Ran(log, controller, station, start, minutes), i, start);
            }
        }
    }

    /// <summary>What a start really gave a station, net mm.</summary>
    public static double Ran(PlainLog log, Controller controller, Station station, PlainStart start, double baseMinutes)
    {
        Setting setting = log.SettingAt(start.Program, start.At);
        var due = PlainWater.Minutes(controller, baseMinutes, setting.Percent);
        return PlainWater.NetMm(station, due * log.RanShare(station, start));
    }
}
