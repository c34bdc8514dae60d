namespace DailyAdjust.Core.Weather;

/// <summary>What the daily equation needs of one day.</summary>
public readonly record struct DailyAir
{
    /// <summary>°C.</summary>
    public required double AirTemperatureMaxC { get; init; }

    /// <summary>°C, at most the highest.</summary>
    public required double AirTemperatureMinC { get; init; }

    /// <summary>Actual vapour pressure ea, kPa, 0 or more.</summary>
    public required double VapourPressureKPa { get; init; }

    /// <summary>m/s at 2 m, 0 or more.</summary>
    public required double WindSpeed2mMPerS { get; init; }

    /// <summary>Rs, MJ/m² per day, 0 or more.</summary>
    public required double SolarRadiationMJPerM2Day { get; init; }

    /// <summary>Ra, MJ/m² per day, 0 or more.</summary>
    public required double ExtraterrestrialRadiationMJPerM2Day { get; init; }

    /// <summary>m.</summary>
    public required double ElevationM { get; init; }

    /// <summary>G, MJ/m² per day; 0 from one day to the next. Source: [FAO56] eq. 42, p. 54.</summary>
    public double SoilHeatFluxMJPerM2Day { get; init; }

    /// <summary>At its extremes, where it is known already; else it is reckoned from them.</summary>
    public DaySaturation? Saturation { get; init; }
}

/// <summary>Reference ET of a whole day. Source: [FAO56] eq. 6, p. 24.</summary>
public static class ReferenceEtDaily
{
    internal const double Cn = 900;
    internal const double Cd = 0.34;

    /// <summary>Net radiation, MJ/m² per day. Source: [FAO56] eq. 40, p. 53.</summary>
    public static double NetRadiationMJPerM2Day(in DailyAir day)
    {
        var clearSky = Radiation.ClearSkyMJPerM2(day.ExtraterrestrialRadiationMJPerM2Day, day.ElevationM);
        var cloud = Radiation.CloudFactor(day.SolarRadiationMJPerM2Day, clearSky);
        return Radiation.NetShortwaveMJPerM2(day.SolarRadiationMJPerM2Day)
            - Radiation.NetLongwaveMJPerM2Day(day.AirTemperatureMaxC, day.AirTemperatureMinC, day.VapourPressureKPa, cloud);
    }

    /// <summary>Reference ET, mm per day, 0 or more. Source: [FAO56] eq. 6, p. 24.</summary>
    public static double EtoMm(in DailyAir day)
    {
        var air = new AirState(
            (day.AirTemperatureMaxC + day.AirTemperatureMinC) / 2,
            day.WindSpeed2mMPerS,
            (day.Saturation ?? DaySaturation.Of(day.AirTemperatureMaxC, day.AirTemperatureMinC)).MeanKPa - day.VapourPressureKPa,
            day.ElevationM);
        return Math.Max(0, PenmanMonteith.ReferenceEtMm(air, NetRadiationMJPerM2Day(day) - day.SoilHeatFluxMJPerM2Day, Cn, Cd));
    }
}
