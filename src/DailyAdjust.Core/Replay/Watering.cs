using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Core.Replay;

/// <summary>One way to water.</summary>
internal abstract class Watering
{
    /// <summary>The morning of a day, before anything of it runs.</summary>
    public virtual void Morning(ReplayDay day)
    {
    }

    /// <summary>How long a station runs at a start.</summary>
    public abstract double Minutes(in Moment moment);

    /// <summary>The day is over.</summary>
    public virtual void Evening(ReplayDay day)
    {
    }
}

/// <summary>Dials that somebody sets, or nobody does: every program runs at a percentage of its base minutes.</summary>
internal class DialWatering(int programs) : Watering
{
    /// <summary>What each program runs at until the morning's round is done.</summary>
    protected Setting[] Before { get; } = [.. Enumerable.Repeat(Setting.Full, programs)];

    /// <summary>What it runs at from then on.</summary>
    protected Setting[] After { get; } = [.. Enumerable.Repeat(Setting.Full, programs)];

    public override double Minutes(in Moment moment)
    {
        var start = moment.Start;
        var run = start.Run!;
        var setting = start.At >= moment.Day.RoundDone ? After[run.Program] : Before[run.Program];
        return setting.IsOff ? 0 : RunMinutes.At(run.Controller, run.BaseMinutes, setting.Percent);
    }

    public override void Evening(ReplayDay day) => After.CopyTo(Before, 0);
}
