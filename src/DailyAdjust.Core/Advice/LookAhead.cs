using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Core.Advice;

/// <summary>What later visits would say if no rain falls.</summary>
internal static class LookAhead
{
    private const int Days = 21;

    /// <summary>The first later visit on which the program, off until then, could not be left out and may run by what is ordered today; with its number.</summary>
    public static AfterTonight? Resume(AdviceContext context, ProgramCase program)
    {
        foreach (var (visit, horizon) in program.LaterVisits(Days))
        {
            var need = program.NeedOn(horizon, Setting.Off, default);
            if (!ProgramCase.CanSkip(context.Site, need) && !Prohibitions.ForbidsAll(context, program.Program, horizon))
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
}
