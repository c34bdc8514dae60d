namespace DailyAdjust.Core.Weather;

/// <summary>What the hourly equation needs of one hour: means, and sums of radiation.</summary>
public sealed record HourlyAir
{
    /// <summary>°C.</summary>
    public required double AirTemperatureC { get; init; }

    /// <summary>Actual vapour pressure ea, kPa, 0 or more.</summary>
    public required double VapourPressureKPa { get; init; }

    /// <summary>m/s at 2 m, 0 or more.</summary>
    public required double WindSpeed2mMPerS { get; init; }

    /// <summary>Rs, MJ/m² in the hour, 0 or more.</summary>
    public required double SolarRadiationMJPerM2 { get; init; }

    /// <summary>From <see cref="Radiation.CloudFactor(double, double)"/>, or held from an hour with the sun higher up.</summary>
    public required double CloudFactor { get; init; }

    /// <summary>m.</summary>
    public required double ElevationM { get; init; }
}

/// <summary>Short reference ET of one hour. Source: [ASCE05] eq. 1 and table 1.</summary>
public static class ReferenceEtHourly
{
    internal const double Cn = 37;
    internal const double CdDay = 0.24;
    internal const double CdNight = 0.96;
    internal const double SoilHeatShareDay = 0.1;
    internal const double SoilHeatShareNight = 0.5;

    /// <summary>Net radiation, MJ/m² in the hour. Source: [ASCE05] eqs 42-44.</summary>
    public static double NetRadiationMJPerM2(HourlyAir hour) =>
        Radiation.NetShortwaveMJPerM2(hour.SolarRadiationMJPerM2)
            - Radiation.NetLongwaveMJPerM2Hour(hour.AirTemperatureC, hour.VapourPressureKPa, hour.CloudFactor);

    /// <summary>Reference ET of the hour, mm; negative where dew forms. Day is where net radiation is above 0.</summary>
    public static double EtoMm(HourlyAir hour)
    {
        var net = NetRadiationMJPerM2(hour);
        var day = net > 0;
        var air = new AirState(
            hour.AirTemperatureC,
            hour.WindSpeed2mMPerS,
            Atmosphere.SaturationVapourPressureKPa(hour.AirTemperatureC) - hour.VapourPressureKPa,
            hour.ElevationM);
        var available = net * (1 - (day ? SoilHeatShareDay : SoilHeatShareNight));
        return PenmanMonteith.ReferenceEtMm(air, available, Cn, day ? CdDay : CdNight);
    }
}
