using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Core.Advice;

/// <summary>What one zone asks of one program.</summary>
/// <param name="Forecast">Its days to come.</param>
/// <param name="Percent">The percentage it needs, on a grid of 1e-4.</param>
/// <param name="CanWait">The turf stays within its allowable depletion without this horizon's water.</param>
/// <param name="Due">Depletion before the first start is past run_at.</param>
internal sealed record ZoneNeed(ZoneForecast Forecast, double Percent, bool CanWait, bool Due)
{
    public ZonePlan Zone => Forecast.Zone;

    public static ZoneNeed Of(ZoneForecast forecast, PlannedProgram program) => new(
        forecast,
        Percent: NeedPercent(forecast),
        CanWait: CanItWait(forecast, program),
        Due: forecast.BeforeFirstMm > (forecast.Zone.Station.Area.RunAt * forecast.Zone.AllowableMm) + Depth.ToleranceMm);

    /// <summary>The larger of (a) putting the need back and (b) staying within allowable depletion.</summary>
    private static double NeedPercent(ZoneForecast forecast)
    {
        var area = forecast.Zone.Station.Area;
        var allowable = forecast.Zone.AllowableMm;
        var refill = PercentSearch.Smallest(p => At(forecast, p).AfterLastMm <= (area.LeaveEmpty * allowable) + Depth.ToleranceMm);
        var putBack = refill is { } r ? area.Replace * r : Setting.LargestPercent;
        var staysWithin = PercentSearch.Smallest(p => At(forecast, p).WorstLaterMm <= allowable + Depth.ToleranceMm)
            ?? PercentSearch.Smallest(p => At(forecast, p).AfterLastMm <= Depth.ToleranceMm)
            ?? Setting.LargestPercent;
        return PercentSearch.OnGrid(Math.Max(putBack, staysWithin));
    }

    private static ForecastOutcome At(ZoneForecast forecast, double percent) =>
        forecast.Run(forecast.Zone.Net.DepthMm(forecast.BaseMinutes * percent / 100));

    private static bool CanItWait(ZoneForecast forecast, PlannedProgram program)
    {
        var largest = RunMinutes.At(program.Controller, forecast.BaseMinutes, program.Controller.PercentMax);
        var outcome = forecast.RunBeyond(forecast.Zone.Net.DepthMm(largest));
        return outcome.WorstLaterMm <= forecast.Zone.AllowableMm + Depth.ToleranceMm
            && outcome.WorstBeyondMm <= forecast.Zone.AllowableMm + Depth.ToleranceMm;
    }
}

/// <summary>Search over percentages of base minutes; more water never does worse.</summary>
internal static class PercentSearch
{
    private const double Width = 1e-6;
    private const double Grid = 1e4;

    /// <summary>The smallest percentage from 0 to 1000 that is enough, from above to 1e-6; null where not even 1000 is.</summary>
    public static double? Smallest(Func<double, bool> enough)
    {
        if (enough(0))
        {
            return 0;
        }

        double tooLittle = 0, plenty = Setting.LargestPercent;
        if (!enough(plenty))
        {
            return null;
        }

        while (plenty - tooLittle > Width)
        {
            var middle = (tooLittle + plenty) / 2;
            if (enough(middle))
            {
                plenty = middle;
            }
            else
            {
                tooLittle = middle;
            }
        }

        return plenty;
    }

    public static double OnGrid(double percent) => Math.Round(percent * Grid, MidpointRounding.AwayFromZero) / Grid;
}
