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

    /// <summary>Before the first start.</summary>
    public bool IsPastAllowable => Forecast.BeforeFirstMm > Forecast.Zone.AllowableMm + Depth.ToleranceMm;

    public static ZoneNeed Of(ZoneForecast forecast, PlannedProgram program) => new(
        forecast,
        Percent: NeedParts.Of(forecast).Percent,
        CanWait: CanItWait(forecast, program),
        Due: forecast.BeforeFirstMm > (forecast.Zone.Station.Area.RunAt * forecast.Zone.AllowableMm) + Depth.ToleranceMm);

    private static bool CanItWait(ZoneForecast forecast, PlannedProgram program)
    {
        var largest = RunMinutes.At(program.Controller, forecast.BaseMinutes, program.Controller.PercentMax);
        var outcome = forecast.RunBeyond(forecast.Zone.Net.DepthMm(largest));
        return outcome.WorstLaterMm <= forecast.Zone.AllowableMm + Depth.ToleranceMm
            && outcome.WorstBeyondMm <= forecast.Zone.AllowableMm + Depth.ToleranceMm;
    }
}

/// <summary>The two percentages of which a zone needs the larger.</summary>
/// <param name="Refill">Smallest that brings depletion to leave_empty × RAW or less after the horizon's last start; null = not even 1000 % does.</param>
/// <param name="PutBack">(a) replace × Refill; 1000 where that is null.</param>
/// <param name="Within">Smallest that keeps depletion within RAW before every later start; null = none does.</param>
/// <param name="Fill">Where Within is null, the smallest that fills the zone to field capacity; null = it is not asked for, or not even 1000 % does.</param>
internal readonly record struct NeedParts(double? Refill, double PutBack, double? Within, double? Fill)
{
    /// <summary>(b) staying within allowable depletion.</summary>
    public double StaysWithin => Within ?? Fill ?? Setting.LargestPercent;

    /// <summary>The larger of (a) and (b), on a grid of 1e-4.</summary>
    public double Percent => PercentSearch.OnGrid(Math.Max(PutBack, StaysWithin));

    public static NeedParts Of(ZoneForecast forecast)
    {
        var area = forecast.Zone.Station.Area;
        var allowable = forecast.Zone.AllowableMm;
        var refill = PercentSearch.Smallest(p => At(forecast, p).AfterLastMm - ((area.LeaveEmpty * allowable) + Depth.ToleranceMm));
        var putBack = refill is { } r ? area.Replace * r : Setting.LargestPercent;
        var within = PercentSearch.Smallest(p => At(forecast, p).WorstLaterMm - (allowable + Depth.ToleranceMm));
        var fill = within is null ? PercentSearch.Smallest(p => At(forecast, p).AfterLastMm - Depth.ToleranceMm) : null;
        return new(refill, putBack, within, fill);
    }

    /// <summary>Net water of each start at a percentage whose minutes are not rounded, mm.</summary>
    public static double WaterMm(ZoneForecast forecast, double percent) => forecast.Zone.Net.DepthMm(forecast.BaseMinutes * percent / 100);

    private static ForecastOutcome At(ZoneForecast forecast, double percent) => forecast.Run(WaterMm(forecast, percent));
}

/// <summary>Search over percentages of base minutes; more water never does worse.</summary>
internal static class PercentSearch
{
    private const double Grid = 1e4;

    /// <summary>1000 % is cut into so many cells, each below 1e-6 %.</summary>
    private const long Cells = 1L << 30;

    private const double PercentOfCell = Setting.LargestPercent / Cells;

    /// <summary>The first look: about 16 %.</summary>
    private const long FirstStep = Cells >> 6;

    /// <summary>Every so many looks the span is halved, so that no shape of the ground's answer takes long.</summary>
    private const int LooksPerHalving = 6;

    /// <summary>
    /// The smallest cell from 0 to 1000 % whose percentage is enough; null where not even 1000 is. What is missing falls mostly in a straight line
    /// with the percentage: a guess along it and a look at its neighbour end the search.
    /// </summary>
    /// <param name="lack">What is missing at a percentage: never grows with it; 0 or less is enough.</param>
    public static double? Smallest(Func<double, double> lack)
    {
        var lackLow = lack(0);
        if (lackLow <= 0)
        {
            return 0;
        }

        long low = 0, high = Cells, next = FirstStep;
        bool highIsEnough = false, isGuess = false;
        for (var look = 1; high - low > 1; look++)
        {
            if (look % LooksPerHalving == 0)
            {
                (next, isGuess) = (low + ((high - low) / 2), false);
            }

            var at = Math.Clamp(next, low + 1, high - 1);
            var lackAt = lack(at * PercentOfCell);
            if (lackAt > 0)
            {
                var fall = (lackLow - lackAt) / (at - low);
                (low, lackLow, isGuess) = (at, lackAt, true);
                next = fall > 0 ? low + (long)Math.Min(high - low, Math.Ceiling(lackLow / fall)) : high;
            }
            else
            {
                (high, highIsEnough) = (at, true);
                next = isGuess ? at - 1 : low + (long)Math.Ceiling((at - low) * (lackLow / (lackLow - lackAt)));
                isGuess = !isGuess;
            }
        }

        return highIsEnough || lack(Setting.LargestPercent) <= 0 ? high * PercentOfCell : null;
    }

    public static double OnGrid(double percent) => Math.Round(percent * Grid, MidpointRounding.AwayFromZero) / Grid;
}
