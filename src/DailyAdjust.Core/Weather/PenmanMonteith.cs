namespace DailyAdjust.Core.Weather;

/// <summary>The combination equation that the daily and the hourly reference ET share. Source: [FAO56] eq. 6, p. 24; [ASCE05] eq. 1.</summary>
internal static class PenmanMonteith
{
    /// <summary>Reference ET of the time step, mm.</summary>
    /// <param name="air">State of the air.</param>
    /// <param name="availableMJPerM2">Net radiation less soil heat flux, of the time step.</param>
    /// <param name="numerator">Cn: 900 for a day, 37 for an hour.</param>
    /// <param name="denominator">Cd: 0.34 for a day; by day and night for an hour.</param>
    public static double ReferenceEtMm(AirState air, double availableMJPerM2, double numerator, double denominator)
    {
        var slope = Atmosphere.SlopeKPaPerC(air.TemperatureC);
        var gamma = Atmosphere.PsychrometricConstantKPaPerC(air.ElevationM);
        var radiation = 0.408 * slope * availableMJPerM2;
        var wind = gamma * numerator / (air.TemperatureC + 273) * air.WindSpeed2mMPerS * air.VapourPressureDeficitKPa;
        return (radiation + wind) / (slope + (gamma * (1 + (denominator * air.WindSpeed2mMPerS))));
    }
}

/// <summary>Mean temperature °C, wind at 2 m, es - ea in kPa, and elevation in m.</summary>
internal readonly record struct AirState(double TemperatureC, double WindSpeed2mMPerS, double VapourPressureDeficitKPa, double ElevationM);
