using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Core.Advice;

/// <summary>Whether the present setting serves as well as the new number would, to what is worth a walk.</summary>
internal static class GoodEnough
{
    /// <summary>
    /// For every zone not set aside, with the controller's minutes: of the program's water at most worth × RAW drains, and before every
    /// later start the turf stays within RAW, or at most worth × RAW above what the new number gives.
    /// </summary>
    public static bool Holds(PlannedProgram program, ProgramNeed need, double presentPercent, double newPercent, double worth) =>
        need.Zones.Where(z => !need.SetAside.Contains(z)).All(z => Holds(program, z.Forecast, presentPercent, newPercent, worth));

    /// <summary>Whether the present settings drain nothing and leave every zone that is not set aside a share of its allowable depletion empty; false where the site asks no such thing.</summary>
    public static bool LeavesRoom(IReadOnlyList<ProgramCase> programs, double? room) => room is { } share && programs.All(c =>
        !c.Present.Setting.IsOff && c.Need!.Zones.Where(z => !c.Need.SetAside.Contains(z)).All(z => LeavesRoom(c, z.Forecast, share)));

    private static bool LeavesRoom(ProgramCase program, ZoneForecast forecast, double share)
    {
        var outcome = forecast.Run(WaterOf(program.Program, forecast, program.Present.Setting.Percent));
        return outcome.DrainedMm <= Depth.ToleranceMm && outcome.AfterLastMm >= (share * forecast.Zone.AllowableMm) - Depth.ToleranceMm;
    }

    /// <summary>Whether no station's minutes would change between the two percentages.</summary>
    public static bool SameMinutes(PlannedProgram program, ProgramNeed need, double presentPercent, double newPercent) =>
        need.Zones.All(z =>
            RunMinutes.At(program.Controller, z.Forecast.BaseMinutes, presentPercent)
            == RunMinutes.At(program.Controller, z.Forecast.BaseMinutes, newPercent));

    internal static bool Holds(PlannedProgram program, ZoneForecast forecast, double presentPercent, double newPercent, double worth)
    {
        var allowable = forecast.Zone.AllowableMm;
        var slack = worth * allowable;
        Span<double> present = new double[forecast.LaterStarts], proposed = new double[forecast.LaterStarts];
        var outcome = forecast.Run(WaterOf(program, forecast, presentPercent), present);
        if (outcome.DrainedMm > slack + Depth.ToleranceMm)
        {
            return false;
        }

        forecast.Run(WaterOf(program, forecast, newPercent), proposed);
        for (var i = 0; i < present.Length; i++)
        {
            if (present[i] > allowable + Depth.ToleranceMm && present[i] > proposed[i] + slack + Depth.ToleranceMm)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Net depth of one start at a dial setting, mm.</summary>
    public static double WaterOf(PlannedProgram program, ZoneForecast forecast, double percent) =>
        forecast.Zone.Net.DepthMm(RunMinutes.At(program.Controller, forecast.BaseMinutes, percent));
}
