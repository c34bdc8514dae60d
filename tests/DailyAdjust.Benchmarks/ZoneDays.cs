using System.Globalization;
using System.Runtime.InteropServices;
using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Courses;
using DailyAdjust.Tests.Plain;

namespace DailyAdjust.Benchmarks;

/// <summary>A season's days at many different zones: rain by the hour, what of it runs off, and one start each; made ready so that the balance alone is measured.</summary>
internal sealed class ZoneDays
{
    private const int Zones = 100;
    private const int Days = 365;
    public const int Count = Zones * Days;

    private readonly RootZone[] _full = new RootZone[Zones];
    private readonly double[] _depletion = new double[Zones];
    private readonly double[] _totals = new double[4];
    private readonly double[] _demand = new double[Count];
    private readonly int[] _first = new int[Count + 1];
    private readonly WaterEvent[] _events;
    private readonly double[] _total;
    private readonly double[] _allowable;
    private readonly EventInC[] _eventsInC;

    private ZoneDays(bool rainEveryDay)
    {
        var dice = new Dice(5);
        for (var zone = 0; zone < Zones; zone++)
        {
            var total = dice.Between(14, 60);
            _full[zone] = new RootZone(total, total * dice.Between(0.35, 0.6), 0);
        }

        var events = new List<WaterEvent>();
        var exposure = Enumerable.Range(0, Zones).Select(_ => dice.Between(0.6, 1.1)).ToArray();
        var soils = Enumerable.Range(0, 4).Select(i => new Soil { Name = "invented", AvailableWaterMmPerM = 150, SurfaceStorage = new(0), CurveNumber = 70 + (5 * i) }).ToArray();
        var days = Weather().Where(d => !rainEveryDay || d.Rain.RainMm > 0).Take(Days).ToArray();
        for (var day = 0; day < Days; day++)
        {
            var weather = days[day];
            for (var zone = 0; zone < Zones; zone++)
            {
                var i = (day * Zones) + zone;
                _first[i] = events.Count;
                _demand[i] = weather.EtoMm * exposure[zone];
                var share = RainOnZone.OfDay(weather.Rain, weather.EtoMm, soils[zone % soils.Length]).SoilShare;
                var ofDay = weather.Rain.Falls.Where(_ => share > 0).Select(f => new WaterEvent(f.At, WaterKind.Rain, weather.Curve.ShareBy(f.At), f.Mm * share)).ToList();
                var start = weather.Midnight.AddMinutes(dice.Chance(0.7) ? 60 + (2 * zone) : 1140 + zone);
                ofDay.Add(new WaterEvent(start, WaterKind.Irrigation, weather.Curve.ShareBy(start), weather.EtoMm * dice.Between(0.2, 1.4)));
                WaterEvent.Sort(ofDay);
                events.AddRange(ofDay);
            }
        }

        _first[Count] = events.Count;
        _events = [.. events];
        _total = [.. _full.Select(z => z.TotalAvailableMm)];
        _allowable = [.. _full.Select(z => z.AllowableMm)];
        _eventsInC = [.. _events.Select(e => new EventInC { DrawnBy = e.DrawnBy, AmountMm = e.AmountMm, Kind = (int)e.Kind })];
    }

    public double EventsEach => (double)_events.Length / Count;

    /// <param name="rainEveryDay">Takes the rainy days alone.</param>
    public static ZoneDays Invented(bool rainEveryDay) => new(rainEveryDay);

    /// <summary>Drawn, irrigated, drained and missing at the days' ends, mm, added up.</summary>
    public double[] Ours()
    {
        double drawn = 0, irrigation = 0, drained = 0, depletions = 0;
        Array.Clear(_depletion);
        for (var day = 0; day < Days; day++)
        {
            for (var zone = 0; zone < Zones; zone++)
            {
                var i = (day * Zones) + zone;
                var soil = new RootZone(_full[zone].TotalAvailableMm, _full[zone].AllowableMm, _depletion[zone]);
                var sums = ZoneDaySums.Run(ref soil, _events.AsSpan(_first[i], _first[i + 1] - _first[i]), _demand[i]);
                _depletion[zone] = soil.DepletionMm;
                drawn += sums.DrawnMm;
                irrigation += sums.IrrigationMm;
                drained += sums.DrainedMm;
                depletions += soil.DepletionMm;
            }
        }

        (_totals[0], _totals[1], _totals[2], _totals[3]) = (drawn, irrigation, drained, depletions);
        return _totals;
    }

    public double[] InC(LoopsInC loops)
    {
        Array.Clear(_depletion);
        loops.ZoneDays(Days, Zones, _total, _allowable, _depletion, _demand, _first, _eventsInC, _totals);
        return _totals;
    }

    /// <summary>Four years of the invented courses' weather with a reference ET that goes with the season.</summary>
    private static IEnumerable<(DateTimeOffset Midnight, double EtoMm, GaugeDay Rain, DrawCurve Curve)> Weather()
    {
        var from = new DateOnly(2022, 1, 1);
        foreach (var hours in CourseWeather.Hourly(from, from.AddDays(1460), seed: 1).Split('\n').Skip(1).Chunk(24).Where(h => h.Length == 24))
        {
            var date = from;
            from = date.AddDays(1);
            var midnight = new DateTimeOffset(date.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero);
            var rain = hours.Select(h => double.Parse(h.Split(',')[5], CultureInfo.InvariantCulture)).ToArray();
            var falls = rain.Select((mm, hour) => new RainFall(midnight.AddHours(hour + 1), mm)).Where(f => f.Mm > 0).ToArray();
            var sun = Sun.Day(date, latitudeDeg: 41, longitudeDeg: 0);
            var eto = 3.5 + (2.5 * Math.Cos(2 * Math.PI * (date.DayOfYear - 196) / 365.25)) - (falls.Length > 0 ? 0.6 : 0);
            yield return (midnight, eto, new GaugeDay("yard", rain.Sum(), falls, RainBasis.Measured, rain.Sum()), new DrawCurve(sun.Sunrise, sun.Sunset));
        }
    }
}

/// <summary>As kernel.c has it.</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct EventInC
{
    public double DrawnBy;
    public double AmountMm;
    public int Kind;
}
