using System.Runtime.InteropServices;
using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Irrigation;

/// <summary>What a zone's day is reckoned from.</summary>
/// <param name="Zone">The zone.</param>
/// <param name="Day">What it shares with the others.</param>
/// <param name="Rain">At its gauge.</param>
/// <param name="OnZone">What became of the rain.</param>
/// <param name="Events">In order.</param>
internal sealed record ZoneDayParts(ZonePlan Zone, DayOfSite Day, GaugeDay Rain, RainOnZone OnZone, IReadOnlyList<WaterEvent> Events);

/// <summary>The balance while it runs: takes one weather day after another. Carries the depletions and nothing else.</summary>
internal sealed class BalanceRun
{
    private readonly IReadOnlyList<SiteVersion> _versions;
    private readonly BalanceInputs _inputs;
    private readonly SettingHistory _settings;
    private readonly RanHistory _ran;
    private readonly HandWater _hand;
    private readonly SeasonHistory _season;
    private readonly List<WaterEvent> _events = [];
    private readonly List<DayTraces> _traces = [];
    private Site? _site;
    private IReadOnlyList<ZonePlan> _zones = [];

    /// <summary>Of each of the zones, mm.</summary>
    private double[] _depletion = [];

    /// <summary>Of each of the zones, its place among the kinds of ground.</summary>
    private int[] _ground = [];

    /// <summary>What the zones of one area at one gauge share on the day that is run; null = nobody asked yet.</summary>
    private GroundDay?[] _groundDays = [];

    /// <summary>Of each of the zones, the place of its box in the site.</summary>
    private int[] _box = [];

    private IReadOnlyList<PlannedProgram> _programs = [];
    private RunRules? _rules;

    public BalanceRun(BalanceInputs inputs)
    {
        _inputs = inputs;
        _versions = inputs.Versions;
        var clock = _versions[^1].Site.Clock;
        _settings = inputs.Settings ?? new SettingHistory(_versions, inputs.Log, inputs.Sheets, inputs.StartsFrom);
        _ran = new RanHistory(clock, inputs.Log);
        _hand = new HandWater(clock, inputs.Log);
        _season = new SeasonHistory(clock, inputs.Log);
    }

    /// <summary>Whose days are kept in <see cref="LastDay"/>; null = nobody's.</summary>
    public StationKey? Watched { get; init; }

    /// <summary>What the watched station's last day was reckoned from.</summary>
    public ZoneDayParts? LastDay { get; private set; }

    /// <summary>Of the days that were run so far.</summary>
    public IReadOnlyList<DayTraces> Traces => _traces;

    /// <summary>Runs a day.</summary>
    /// <param name="weather">The day after the last one.</param>
    /// <param name="into">Where its zone days go; null = they are not wanted.</param>
    /// <returns>Its estimated water, L.</returns>
    public double Day(WeatherDay weather, List<ZoneDay>? into)
    {
        if (weather.EtoMm is not { } eto)
        {
            throw new ArgumentException($"{weather.Date:yyyy-MM-dd} is open: its reference ET is not known.", nameof(weather));
        }

        UseVersion(weather.Date);
        var day = new DayOfSite(_site!, weather.Date, _programs, _rules!, _hand);
        Array.Clear(_groundDays);
        List<DayStart>[] startsOf = [.. _site!.Controllers.Select(c => day.StartsAt(c.Id))];
        var traces = weather.Date >= _inputs.TracesFrom ? new DayTraces(weather.Date, eto, _zones, [.. _depletion], new ZoneTrace[_zones.Count]) : null;
        var litres = 0.0;
        for (var i = 0; i < _zones.Count; i++)
        {
            litres += ZoneDayOf(i, day, _groundDays[_ground[i]] ??= GroundDay.Of(day, weather, _zones[i].Station), startsOf[_box[i]], into, traces);
        }

        if (traces is not null)
        {
            _traces.Add(traces);
        }

        return litres;
    }

    /// <summary>The state at 00:00 of a date, under the site version of that date.</summary>
    public SoilState StateAt(DateOnly date)
    {
        UseVersion(date);
        return new SoilState(date, Depletions());
    }

    private void UseVersion(DateOnly date)
    {
        var site = SiteVersions.On(_versions, date);
        if (ReferenceEquals(site, _site))
        {
            return;
        }

        // Carried over by station and kept within the new TAW; a new station starts full, and so does one that comes back: a stored
        // state knows the stations of its day alone. Null = the balance begins.
        var carried = _site is null ? _inputs.StartState?.DepletionMm : Depletions();
        _site = site;
        var plan = _inputs.Plan is { } laid && ReferenceEquals(laid.Site, site) ? laid : new SitePlan(site);
        (_programs, _zones) = (plan.Programs, plan.Zones);
        List<(string, string)> kinds = [.. _zones.Select(z => (z.Station.Gauge, z.Station.Area.Name)).Distinct()];
        _ground = [.. _zones.Select(z => kinds.IndexOf((z.Station.Gauge, z.Station.Area.Name)))];
        _groundDays = new GroundDay?[kinds.Count];
        List<string> boxes = [.. site.Controllers.Select(c => c.Id)];
        _box = [.. _zones.Select(z => boxes.IndexOf(z.Station.Key.Controller))];
        _rules = new RunRules(
            _settings, _ran, _season, new GrowIns(site, _inputs.Log), new RainSwitches(site, _inputs.Before.Concat(_inputs.Weather).SelectMany(d => d.Rain)), new NightRuns(site));
        _depletion = [.. _zones.Select(zone => carried is null ? zone.StartDepletionMm() : Math.Min(carried.GetValueOrDefault(zone.Station.Key), zone.TotalAvailableMm))];
    }

    private Dictionary<StationKey, double> Depletions() => _zones.Zip(_depletion).ToDictionary(z => z.First.Station.Key, z => z.Second);

    /// <summary>On its own: within the day what the lambda holds would be made for every zone, redrawn or not.</summary>
    private void Redraw(DateOnly date, Func<DateOnly, double, double> shareDrawn) => WaterEvent.Redraw(_events, share => shareDrawn(date, share));

    private double ZoneDayOf(int index, DayOfSite day, GroundDay ground, List<DayStart> starts, List<ZoneDay>? into, DayTraces? traces)
    {
        var zone = _zones[index];
        _events.Clear();
        _events.AddRange(ground.Falls.AsSpan());
        double minutesRun = 0, irrigationRunoff = 0;
        foreach (ref readonly var start in CollectionsMarshal.AsSpan(starts))
        {
            if (zone.BaseMinutesIn(start.Program) is not { } baseMinutes)
            {
                continue;
            }

            var minutes = day.MinutesRun(start, zone, baseMinutes);
            minutesRun += minutes;
            if (_inputs.OnWater is { } told)
            {
                var before = start with { Setting = _settings.LastRunning(start.Program.Key, start.Start.At) };
                told(new StationWater(day.Date, start.Program.Key, start.Start.At, zone.Station, minutes, start.Setting.IsOff ? day.MinutesRun(before, zone, baseMinutes) : 0));
            }

            irrigationRunoff += zone.Net.RunoffMm(minutes);
            _events.Add(new WaterEvent(start.Start.At, WaterKind.Irrigation, start.DrawnBy, zone.Net.DepthMm(minutes)));
        }

        if (day.AddHand(_events, zone) is > 0 and var byHand)
        {
            minutesRun += byHand;
            _inputs.OnWater?.Invoke(new StationWater(day.Date, null, null, zone.Station, byHand, 0));
        }

        WaterEvent.Sort(_events);
        if (_inputs.ShareDrawn is { } shareDrawn)
        {
            Redraw(day.Date, shareDrawn);
        }

        var beforeMm = _depletion[index];
        var soil = new RootZone(zone.TotalAvailableMm, zone.AllowableMm, beforeMm);
        if (Watched is { } watched && zone.Station.Key == watched)
        {
            LastDay = new ZoneDayParts(zone, day, ground.Rain, ground.OnZone, [.. _events]);
        }

        var sums = ZoneDaySums.Run(ref soil, _events, ground.EtoMm * zone.K(ground.Kc));
        _depletion[index] = soil.DepletionMm;
        if (traces is not null)
        {
            traces.Seen[index] = (sums.DrainedMm > 0 ? ZoneTrace.Filled : ZoneTrace.None) | (sums.LastProbe is null ? ZoneTrace.None : ZoneTrace.Probed);
        }

        into?.Add(ZoneDayListed(zone, day.Date, ground, sums, beforeMm, soil.DepletionMm, irrigationRunoff, minutesRun));
        return minutesRun * (zone.Station.FlowLPerMin ?? 0);
    }

    /// <summary>On its own, so that a day that nobody wants to see stays short.</summary>
    private static ZoneDay ZoneDayListed(ZonePlan zone, DateOnly date, GroundDay ground, ZoneDaySums sums, double beforeMm, double depletionMm, double irrigationRunoffMm, double minutesRun)
    {
        var k = zone.K(ground.Kc);
        return new ZoneDay
        {
            Date = date,
            Station = zone.Station.Key,
            Area = zone.Station.Area.Name,
            EtoMm = ground.EtoMm,
            K = k,
            Ks = ground.EtoMm * k > 0 ? sums.DrawnMm / (ground.EtoMm * k) : 1,
            EtcMm = sums.DrawnMm,
            RainMm = ground.Rain.RainMm,
            InterceptedMm = ground.OnZone.InterceptedMm,
            RunoffMm = ground.OnZone.RunoffMm,
            IrrigationMm = sums.IrrigationMm,
            HoseMm = sums.HoseMm,
            DrainageMm = sums.DrainedMm,
            ProbeMm = sums.ProbeMm,
            ProbeCutMm = sums.ProbeCutMm,
            DepletionBeforeMm = beforeMm,
            DepletionMm = depletionMm,
            RawMm = zone.AllowableMm,
            TawMm = zone.TotalAvailableMm,
            IrrigationRunoffMm = irrigationRunoffMm,
            MinutesRun = minutesRun,
            LastProbe = sums.LastProbe,
        };
    }
}
