using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>What later visits would say if no rain falls.</summary>
internal static class LookAhead
{
    private const int Days = 21;

    /// <summary>The first later visit on which the program, off until then, could not be left out; with its number.</summary>
    public static AfterTonight? Resume(AdviceContext context, ProgramCase program)
    {
        foreach (var (visit, horizon) in program.LaterVisits(Days))
        {
            var need = program.NeedOn(horizon, Setting.Off, default);
            if (!ProgramCase.CanSkip(context.Site, need))
            {
                return new AfterTonight(visit, DialNumber.Nearest(program.Program.Controller, need.ExactPercent));
            }
        }

        return null;
    }

    /// <summary>What the next visit with a start would say after this number; null where that is no different or not in sight.</summary>
    public static AfterTonight? After(AdviceContext context, ProgramCase program, double number)
    {
        // Two steps of the dial are within what tomorrow's weather decides anyway.
        var noticeable = 2 * program.Program.Controller.PercentStep;
        foreach (var (visit, horizon) in program.LaterVisits(7))
        {
            var need = program.NeedOn(horizon, new Setting(number), default);
            if (ProgramCase.CanSkip(context.Site, need))
            {
                return null;
            }

            var next = DialNumber.Nearest(program.Program.Controller, need.ExactPercent);
            return Math.Abs(next - number) > noticeable ? new AfterTonight(visit, next) : null;
        }

        return null;
    }

    /// <summary>The first later visit that has a start to decide about.</summary>
    public static DateOnly? NextJudged(ProgramCase program) =>
        program.LaterVisits(370).Select(v => (DateOnly?)v.Visit).FirstOrDefault();

    /// <summary>The least rain right before the next start that would make the program one to leave out; null where none up to 50 mm does.</summary>
    public static StopRule? StopRuleOf(AdviceContext context, ProgramCase program)
    {
        const double most = 50;
        var step = context.Site.Units == UnitSystem.Us ? 0.02 * Depth.MmPerInch : 0.5;
        int low = 0, high = (int)(most / step);
        bool Enough(int steps) => ProgramCase.CanSkip(context.Site, program.NeedOn(program.Horizon, Setting.Off, new SupposedRain(steps * step)));
        if (Enough(low) || !Enough(high))
        {
            return null;
        }

        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = Enough(middle) ? (low, middle) : (middle, high);
        }

        var gauge = context.ZonesOf(program.Program)
            .GroupBy(z => z.Station.Gauge, StringComparer.Ordinal)
            .MaxBy(g => g.Sum(z => z.Station.GroundM2 ?? 1))!.Key;
        return new StopRule(gauge, high * step, program.Horizon.Starts[0].At);
    }
}
