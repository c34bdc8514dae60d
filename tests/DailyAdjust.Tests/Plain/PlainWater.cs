using DailyAdjust.Core.Sites;

namespace DailyAdjust.Tests.Plain;

/// <summary>Minutes and depths.</summary>
internal static class PlainWater
{
    /// <summary>Minutes that a controller runs at a percentage: to its step, halves up unless it cuts or raises.</summary>
    public static double Minutes(Controller controller, double baseMinutes, double percent)
    {
        var steps = baseMinutes * percent / 100 / controller.MinutesStep;
        var whole = controller.Rounding switch
        {
            MinutesRounding.Down => Math.Floor(steps + 1e-9),
            MinutesRounding.Up => Math.Ceiling(steps - 1e-9),
            _ => Math.Floor(steps + 0.5 + 1e-9),
        };
        return whole * controller.MinutesStep;
    }

    /// <summary>Net depth of one start, mm: minutes beyond the longest cycle without runoff count at the intake rate.</summary>
    public static double NetMm(Station station, double minutes)
    {
        var rate = station.Rate.MmPerHour;
        var full = minutes;
        double slow = 0;
        var intake = station.Area.Soil.IntakeRate?.MmPerHour;
        if (intake is { } rateIn && rate > rateIn)
        {
            var longest = 60 * station.Area.Soil.SurfaceStorage.Mm / (rate - rateIn);
            full = Math.Min(minutes, longest);
            slow = minutes - full;
        }

        var efficiency = station.DistributionUniformity is { } measured ? 0.4 + (0.6 * measured) : station.Area.Efficiency;
        return ((full * rate) + (slow * (intake ?? 0))) / 60 * efficiency;
    }

    /// <summary>[TR55] eqs 2-1 to 2-4, p. 2-1, in mm.</summary>
    public static double Runoff(double rainMm, double? curveNumber)
    {
        if (curveNumber is not { } cn)
        {
            return 0;
        }

        var s = 25.4 * ((1000 / cn) - 10);
        var initial = 0.2 * s;
        return rainMm <= initial ? 0 : (rainMm - initial) * (rainMm - initial) / (rainMm - initial + s);
    }

    /// <summary>Kc runs linearly between the 15ths of the months.</summary>
    public static double Kc(Area area, DateOnly date)
    {
        var before = new DateOnly(date.Year, date.Month, 15);
        if (date < before)
        {
            before = before.AddMonths(-1);
        }

        var after = before.AddMonths(1);
        var part = (double)(date.DayNumber - before.DayNumber) / (after.DayNumber - before.DayNumber);
        var from = area.Kc[before.Month - 1];
        return from + ((area.Kc[after.Month - 1] - from) * part);
    }
}
