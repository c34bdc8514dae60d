using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Core.Replay;

/// <summary>One zone while days run through it, watered in one way: both balances and what is counted.</summary>
internal sealed class ReplayZone
{
    private ProtocolBalance _protocol;
    private double _gross;
    private double _net;
    private double _drained;
    private double _ranOff;
    private double _rainRanOff;
    private double _drawn;
    private int _stressDays;

    public ReplayZone(ZonePlan plan, IReadOnlyList<PlannedProgram> programs)
    {
        Plan = plan;
        Runs = [.. plan.Programs.Select(p => new ZoneRun(IndexOf(programs, p.Program), p.Program.Controller, p.BaseMinutes))];
        MmPerMinute = plan.Station.Rate.MmPerHour / 60;
        DepletionMm = plan.StartDepletionMm();
        _protocol = new ProtocolBalance(plan.AllowableMm, DepletionMm);
    }

    public ZonePlan Plan { get; }

    /// <summary>In the controller's order.</summary>
    public ZoneRun[] Runs { get; }

    /// <summary>Gross.</summary>
    public double MmPerMinute { get; }

    /// <summary>At 00:00 of the next day.</summary>
    public double DepletionMm { get; private set; }

    public ReplayFigures Figures => new()
    {
        AdequacyPercent = _protocol.AdequacyPercent,
        ExcessPercent = _protocol.ExcessPercent,
        WaterMm = _gross,
        NetMm = _net,
        DrainageMm = _drained,
        RunoffMm = _ranOff,
        RainRunoffMm = _rainRanOff,
        StressDays = _stressDays,
        EtcMm = _drawn,
    };

    /// <summary>Unstressed demand of a day, mm.</summary>
    public double DemandMm(ReplayDay day) => day.EtoMm * Plan.K(day.Date);

    /// <summary>One day in order of time.</summary>
    public void Run(ReplayDay day, List<ReplayEvent> events, Watering watering)
    {
        var soil = new RootZone(Plan.TotalAvailableMm, Plan.AllowableMm, DepletionMm);
        var demand = DemandMm(day);
        double drawnBy = 0, worst = DepletionMm;
        soil.BeginDay();
        for (var i = 0; i < events.Count; i++)
        {
            var e = events[i];
            Draw(ref soil, demand * (e.DrawnBy - drawnBy));
            drawnBy = Math.Max(drawnBy, e.DrawnBy);
            worst = Math.Max(worst, soil.DepletionMm);
            if (e.Run is null)
            {
                _protocol.Rain(e.RainMm);
                _rainRanOff += e.SoilMm > 0 ? e.RainMm - e.SoilMm : 0;
                _drained += soil.Add(e.SoilMm);
            }
            else
            {
                Water(ref soil, watering.Minutes(new Moment(this, day, events, i, demand, soil.DepletionMm, _protocol.RoomMm)));
            }
        }

        Draw(ref soil, demand * (1 - drawnBy));
        DepletionMm = soil.DepletionMm;
        _stressDays += Math.Max(worst, soil.DepletionMm) > Plan.AllowableMm + Depth.ToleranceMm ? 1 : 0;
    }

    private void Draw(ref RootZone soil, double demandMm)
    {
        _drawn += soil.Draw(demandMm);
        _protocol.Draw(demandMm);
    }

    private void Water(ref RootZone soil, double minutes)
    {
        var net = Plan.Net.DepthMm(minutes);
        var runoff = Plan.Net.RunoffMm(minutes);
        _gross += minutes * MmPerMinute;
        _ranOff += runoff / Plan.Station.Efficiency;
        _net += net;
        _drained += soil.Add(net);
        _protocol.Irrigate(net + runoff, runoff);
    }

    private static int IndexOf(IReadOnlyList<PlannedProgram> programs, PlannedProgram program)
    {
        for (var i = 0; i < programs.Count; i++)
        {
            if (programs[i].Key == program.Key)
            {
                return i;
            }
        }

        throw new ArgumentException($"{program.Key} is not a program of the site.", nameof(program));
    }
}

/// <summary>A zone at the instant of a start, before its water.</summary>
/// <param name="Zone">Which.</param>
/// <param name="Day">The day.</param>
/// <param name="Events">All of the day.</param>
/// <param name="Index">The start among them.</param>
/// <param name="DemandMm">The day's.</param>
/// <param name="DepletionMm">Of our balance.</param>
/// <param name="RoomMm">Of the protocol's.</param>
internal readonly record struct Moment(ReplayZone Zone, ReplayDay Day, List<ReplayEvent> Events, int Index, double DemandMm, double DepletionMm, double RoomMm)
{
    public ReplayEvent Start => Events[Index];
}
