using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Tests.Plain;

/// <summary>What is known on a morning, and what a zone comes to from 00:00 of it.</summary>
internal sealed class PlainMorning
{
    private readonly MorningInputs _inputs;
    private readonly DateTimeOffset _roundDone;
    private readonly Dictionary<StationKey, double> _depletion;

    public PlainMorning(MorningInputs inputs)
    {
        _inputs = inputs;
        Log = new(inputs.Versions, inputs.Log, inputs.Sheets);
        Site = Log.SiteOn(inputs.Date);
        _roundDone = Site.Clock.ToInstant(inputs.Date, Site.Report.RoundDoneBy);
        _depletion = Depletion();
    }

    public PlainLog Log { get; }

    /// <summary>What programs run at from the round on, where that is decided already.</summary>
    public Dictionary<ProgramKey, Setting> NewSettings { get; } = [];

    public Site Site { get; }

    public bool HasOpenDay => _inputs.Weather.Any(w => w.EtoMm is null);

    public bool WeatherTooOld => _inputs.NewestReadingEnd is not { } end || _inputs.AsOf - end > Site.Report.WeatherMaxAge;

    public Setting Present(ProgramKey program) => Log.SettingAt(program, _inputs.AsOf);

    /// <summary>From the round on; far in the future where there is none.</summary>
    public DateTimeOffset FirstStart(Controller controller, WateringProgram program) => Enumerable.Range(0, 370)
        .SelectMany(n => PlainStart.InDay(Site, controller, program, _inputs.Date.AddDays(n)))
        .Select(s => s.At)
        .Where(at => at >= _roundDone)
        .DefaultIfEmpty(DateTimeOffset.MaxValue)
        .First();

    public double DepletionOf(Station station) => _depletion[station.Key];

    /// <summary>The mean of the last 7 known days; from the second day on the month's normal if that is larger. Null = nothing is known.</summary>
    public double? ExpectedEto(DateOnly date)
    {
        var known = _inputs.Weather
            .Where(w => w.EtoMm is not null && w.Basis is not (EtoBasis.Expected or EtoBasis.Open))
            .TakeLast(7)
            .Select(w => w.EtoMm!.Value)
            .ToList();
        var normal = Site.Weather.Normals?.EtoMmPerDay[date.Month - 1];
        if (known.Count == 0)
        {
            return normal;
        }

        var mean = known.Average();
        return date > _inputs.Date && normal > mean ? normal : mean;
    }

    /// <summary>
    /// Every event of a zone from 00:00 of the morning's date to the end of a last start's day. The program asked about runs the given
    /// gross minutes from round_done_by on; everything else runs as it is set.
    /// </summary>
    public IReadOnlyList<PlainStep> Simulate(Station station, WateringProgram asked, Func<PlainStart, double> minutes, PlainStart last)
    {
        var lastDay = Site.Clock.DateOf(last.At);
        var steps = new List<PlainStep>();
        var dr = DepletionOf(station);
        for (var date = _inputs.Date; date <= lastDay; date = date.AddDays(1))
        {
            var potential = Potential(station, date);
            List<PlainEvent> events = [.. Irrigation(station, asked, minutes, date), .. Log.ByHand(station, date)];
            if (date == _inputs.Date)
            {
                events.AddRange(RainSoFar(station));
            }

            var trace = PlainSoil.Day(dr, station.Area, potential, PlainSun.Of(Site, date), events);
            steps.AddRange(trace.Steps);
            dr = trace.End;
        }

        return steps;
    }

    /// <summary>At the day's end, with what came in so far and what runs before the round is done; nothing of tonight.</summary>
    public double Tonight(Station station)
    {
        var date = _inputs.Date;
        List<PlainEvent> events = [.. Irrigation(station, null, _ => 0, date).Where(e => e.At < _roundDone), .. Log.ByHand(station, date), .. RainSoFar(station)];
        return PlainSoil.Day(DepletionOf(station), station.Area, Potential(station, date), PlainSun.Of(Site, date), events).End;
    }

    /// <summary>What an instant of the day, or of the one after it, finds, under the same terms.</summary>
    public double Finds(Station station, DateTimeOffset at)
    {
        var date = Site.Clock.DateOf(at);
        PlainEvent look = new(at, PlainWhat.Rain, 0);
        if (date > _inputs.Date)
        {
            return PlainSoil.Day(Tonight(station), station.Area, Potential(station, date), PlainSun.Of(Site, date), [look]).Steps[0].Before;
        }

        List<PlainEvent> events = [.. Irrigation(station, null, _ => 0, date).Where(e => e.At < _roundDone), .. Log.ByHand(station, date), .. RainSoFar(station), look];
        return PlainSoil.Day(DepletionOf(station), station.Area, Potential(station, date), PlainSun.Of(Site, date), events).Steps.Single(s => ReferenceEquals(s.Event, look)).Before;
    }

    public DateTimeOffset RoundDone => _roundDone;

    /// <summary>Water of a station's starts from this round to the next, mm each.</summary>
    /// <param name="station">Which.</param>
    /// <param name="percent">Of each program; 0 = does not run.</param>
    public IReadOnlyList<(DateTimeOffset At, double Mm)> Night(Station station, Func<ProgramKey, double> percent)
    {
        var controller = Site.Controllers.Single(c => c.Id.Is(station.Key.Controller));
        var ends = Site.Clock.ToInstant(_inputs.Date.AddDays(1), Site.Report.RoundDoneBy);
        return [.. from program in controller.Programs
                   where station.BaseMinutes.ContainsKey(program.Id)
                   from day in new[] { _inputs.Date, _inputs.Date.AddDays(1) }
                   from start in PlainStart.InDay(Site, controller, program, day)
                   where start.At >= _roundDone && start.At < ends
                   let mm = PlainWater.NetMm(station, PlainWater.Minutes(controller, station.BaseMinutes[program.Id], percent(start.Program)))
                   where mm > 0
                   select (start.At, mm)];
    }

    private double Potential(Station station, DateOnly date) => ExpectedEto(date)!.Value * PlainWater.Kc(station.Area, date) * station.Exposure;

    /// <summary>As it fell: nothing intercepted, no runoff.</summary>
    private IEnumerable<PlainEvent> RainSoFar(Station station) =>
        _inputs.RainSinceMidnight.First(g => g.Gauge.Is(station.Gauge)).Falls.Select(f => new PlainEvent(f.At, PlainWhat.Rain, f.Mm));

    private IEnumerable<PlainEvent> Irrigation(Station station, WateringProgram? asked, Func<PlainStart, double> minutes, DateOnly date)
    {
        var controller = Site.Controllers.Single(c => c.Id.Is(station.Key.Controller));
        for (var i = 0; i < controller.Programs.Count; i++)
        {
            var program = controller.Programs[i];
            if (!station.BaseMinutes.TryGetValue(program.Id, out var baseMinutes))
            {
                continue;
            }

            foreach (var start in PlainStart.InDay(Site, controller, program, date))
            {
                double net;
                if (start.At <= _inputs.AsOf)
                {
                    net = PlainBalance.Ran(Log, controller, station, start, baseMinutes);
                }
                else if (program == asked && start.At >= _roundDone)
                {
                    net = PlainWater.NetMm(station, minutes(start));
                }
                else
                {
                    net = PlainWater.NetMm(station, PlainWater.Minutes(controller, baseMinutes, Later(start).Percent));
                }

                yield return new(start.At, PlainWhat.Irrigation, net, i, start);
            }
        }
    }

    private Setting Later(PlainStart start) =>
        start.At >= _roundDone && NewSettings.TryGetValue(start.Program, out var setting) ? setting : Present(start.Program);

    private Dictionary<StationKey, double> Depletion()
    {
        // An open day ends the balance: no advice will rest on what comes after it.
        var days = PlainBalance.Run(new BalanceInputs
        {
            Versions = _inputs.Versions,
            Weather = [.. _inputs.Weather.TakeWhile(w => w.EtoMm is not null)],
            Log = _inputs.Log,
            Sheets = _inputs.Sheets,
            StartState = _inputs.StartState,
        });
        var ends = days.GroupBy(d => d.Station).ToDictionary(g => g.Key, g => g.Last().DepletionMm);
        return Site.Stations.ToDictionary(s => s.Key, s =>
        {
            var before = ends.TryGetValue(s.Key, out var end) ? end
                : _inputs.StartState?.DepletionMm.GetValueOrDefault(s.Key)
                ?? (days.Count == 0 ? PlainBalance.StartDepletion(Site, s) : 0);
            return Math.Min(before, s.Area.TotalAvailableWaterMm);
        });
    }
}
