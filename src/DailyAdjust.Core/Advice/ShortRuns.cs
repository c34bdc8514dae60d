using DailyAdjust.Core.Irrigation;

namespace DailyAdjust.Core.Advice;

/// <summary>Runs so short that they do little but fill the pipes: less than the controller's least run, on most of a program's ground.</summary>
internal static class ShortRuns
{
    private const double Tolerance = 1e-9;

    /// <summary>Whether most of the ground would run shorter than the least run at a number of the dial.</summary>
    public static bool OnMostGround(IReadOnlyList<ProgramCase> cases, double percent) => OnMostGround(cases, _ => percent);

    /// <summary>The same, each program at a number of its own.</summary>
    public static bool OnMostGround(IReadOnlyList<ProgramCase> cases, Func<ProgramCase, double> percentOf)
    {
        double whole = 0, tooShort = 0;
        foreach (var program in cases)
        {
            var ground = ProgramNeed.GroundOf(program.Need!.Zones);
            foreach (var zone in program.Need.Zones)
            {
                var controller = program.Program.Controller;
                var percent = percentOf(program);
                whole += ground(zone);
                tooShort += RunMinutes.At(controller, zone.Forecast.BaseMinutes, percent) < controller.LeastRunMinutes - Tolerance ? ground(zone) : 0;
            }
        }

        return tooShort > (whole / 2) + Tolerance;
    }

    /// <summary>The smallest number of the dial, from a given one on, at which most of the ground runs long enough; the given one where none does.</summary>
    public static double Raise(IReadOnlyList<ProgramCase> cases, double percent)
    {
        var controller = cases[0].Program.Controller;
        for (var number = percent; number <= controller.PercentMax + Tolerance; number = DialNumber.AtMost(controller, number + controller.PercentStep))
        {
            if (!OnMostGround(cases, number))
            {
                return number;
            }

            if (number >= controller.PercentMax - Tolerance)
            {
                break;
            }
        }

        return percent;
    }
}
