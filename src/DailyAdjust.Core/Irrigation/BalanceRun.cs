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
    private Site? _site;
    private IReadOnlyList<ZonePlan> _zones = [];

    /// <summary>Of each of the zones, mm.</summary>
    private double[] _depletion = [];

    /// <summary>Of each of the zones, its place among the kinds of ground.</summary>
    private int[] _ground = [];

    /// <summary>What the zones of one area at one gauge share on the day that is run.</summary>
    private GroundDay[] _groundDays = [];

    private IReadOnlyList<PlannedProgram> _programs = [];
    private RunRules? _rules;

    public BalanceRun(BalanceInputs inputs)
    {
        _inputs = inputs;
        _versions = inputs.Versions;
        var clock = _versions[^1].Site.Clock;
        _settings = new SettingHistory(_versions, inputs.Log, inputs.Sheets, inputs.StartsFrom);
        _ran = new RanHistory(clock, inputs.Log);
        _hand = new HandWater(clock, inputs.Log);
        _season = new SeasonHistory(clock, inputs.Log);
    }

    /// <summary>Whose days are kept in <see cref="LastDay"/>; null = nobody's.</summary>
    public StationKey? Watched { get; init; }

    /// <summary>What the watched station's last day was reckoned from.</summary>
    public ZoneDayParts? LastDay { get; private set; }

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
        var litres = 0.0;
        for (var i = 0; i < _zones.Count; i++)
        {
            litres += ZoneDayOf(i, day, _groundDays[_ground[i]] ??= GroundDay.Of(day, weather, _zones[i].Station), eto, into);
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
        _programs = ZonePlan.AllPrograms(site);
        _zones = ZonePlan.Of(site, _programs);
        List<(string, string)> kinds = [.. _zones.Select(z => (z.Station.Gauge, z.Station.Area.Name)).Distinct()];
        _ground = [.. _zones.Select(z => kinds.IndexOf((z.Station.Gauge, z.Station.Area.Name)))];
        _groundDays = new GroundDay[kinds.Count];
        _rules = new RunRules(
            _settings, _ran, _season, new GrowIns(site, _inputs.Log), new RainSwitches(site, _inputs.Before.Concat(_inputs.Weather).SelectMany(d => d.Rain)), new NightRuns(site));
        _depletion = [.. _zones.Select(zone => carried is null ? zone.StartDepletionMm() : Math.Min(carried.GetValueOrDefault(zone.Station.Key), zone.TotalAvailableMm))];
    }

    private Dictionary<StationKey, double> Depletions() => _zones.Zip(_depletion).ToDictionary(z => z.First.Station.Key, z => z.Second);

    /// <summary>On its own: within the day what the lambda holds would be made for every zone, redrawn or not.</summary>
    private void Redraw(DateOnly date, Func<DateOnly, double, double> shareDrawn) => WaterEvent.Redraw(_events, share => shareDrawn(date, share));

    private double ZoneDayOf(int index, DayOfSite day, GroundDay ground, double eto, List<ZoneDay>? into)
    {
        var zone = _zones[index];
        var station = zone.Station;
        _events.Clear();
        _events.AddRange(ground.Falls);
        double minutesRun = 0, irrigationRunoff = 0;
        foreach (var start in day.StartsAt(station.Key.Controller))
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
                told(new StationWater(day.Date, start.Program.Key, start.Start.At, station, minutes, start.Setting.IsOff ? day.MinutesRun(before, zone, baseMinutes) : 0));
            }

            irrigationRunoff += zone.Net.RunoffMm(minutes);
            _events.Add(new WaterEvent(start.Start.At, WaterKind.Irrigation, start.DrawnBy, zone.Net.DepthMm(minutes)));
        }

        if (day.AddHand(_events, zone) is > 0 and var byHand)
        {
            minutesRun += byHand;
            _inputs.OnWater?.Invoke(new StationWater(day.Date, null, null, station, byHand, 0));
        }

        WaterEvent.Sort(_events);
        if (_inputs.ShareDrawn is { } shareDrawn)
        {
            Redraw(day.Date, shareDrawn);
        }

        var depletionBefore = _depletion[index];
        var soil = new RootZone(zone.TotalAvailableMm, zone.AllowableMm, depletionBefore);
        if (station.Key == Watched)
        {
            LastDay = new ZoneDayParts(zone, day, ground.Rain, ground.OnZone, [.. _events]);
        }

        var k = zone.K(ground.Kc);
        var sums = ZoneDaySums.Run(ref soil, _events, eto * k);
        _depletion[index] = soil.DepletionMm;
        into?.Add(new ZoneDay
        {
            Date = day.Date,
            Station = station.Key,
            Area = station.Area.Name,
            EtoMm = eto,
            K = k,
            Ks = eto * k > 0 ? sums.DrawnMm / (eto * k) : 1,
            EtcMm = sums.DrawnMm,
            RainMm = ground.Rain.RainMm,
            InterceptedMm = ground.OnZone.InterceptedMm,
            RunoffMm = ground.OnZone.RunoffMm,
            IrrigationMm = sums.IrrigationMm,
            HoseMm = sums.HoseMm,
            DrainageMm = sums.DrainedMm,
            ProbeMm = sums.ProbeMm,
            ProbeCutMm = sums.ProbeCutMm,
            DepletionBeforeMm = depletionBefore,
            DepletionMm = soil.DepletionMm,
            RawMm = zone.AllowableMm,
            TawMm = zone.TotalAvailableMm,
            IrrigationRunoffMm = irrigationRunoff,
            MinutesRun = minutesRun,
            LastProbe = sums.LastProbe,
        });
        return minutesRun * (station.FlowLPerMin ?? 0);
    }
}
