namespace DailyAdjust.ServiceTests.Fallback;

/// <summary>
/// The daily equations as [FAO56] prints them, written down once more for the tests: nothing of the program stands in them.
/// </summary>
internal static class PaperEquations
{
    /// <summary>e°(T), kPa. Source: [FAO56] eq. 11, p. 36.</summary>
    public static double SaturationKPa(double c) => 0.6108 * Math.Exp(17.27 * c / (c + 237.3));

    /// <summary>ea from extremes of humidity, kPa. Source: [FAO56] eq. 17, p. 38.</summary>
    public static double VapourKPa(double maxC, double minC, double maxPercent, double minPercent) =>
        ((SaturationKPa(minC) * maxPercent / 100) + (SaturationKPa(maxC) * minPercent / 100)) / 2;

    /// <summary>Ra, MJ/m² per day. Source: [FAO56] eqs 21, 23, 24 and 25, p. 46.</summary>
    public static double RaMJPerM2(double latitudeDeg, int dayOfYear)
    {
        var latitude = Math.PI / 180 * latitudeDeg;
        var distance = 1 + (0.033 * Math.Cos(2 * Math.PI / 365 * dayOfYear));
        var declination = 0.409 * Math.Sin((2 * Math.PI / 365 * dayOfYear) - 1.39);
        var sunset = Math.Acos(-Math.Tan(latitude) * Math.Tan(declination));
        return 24 * 60 / Math.PI * 0.0820 * distance
            * ((sunset * Math.Sin(latitude) * Math.Sin(declination)) + (Math.Cos(latitude) * Math.Cos(declination) * Math.Sin(sunset)));
    }

    /// <summary>Rs from the range of temperature inland, MJ/m² per day, at most that of a clear sky. Source: [FAO56] eqs 37 and 50, p. 51 and 60.</summary>
    public static double RsFromRangeMJPerM2(double maxC, double minC, double ra, double elevationM) =>
        Math.Min(0.16 * Math.Sqrt(maxC - minC) * ra, (0.75 + (2e-5 * elevationM)) * ra);

    /// <summary>ETo, mm per day. Source: [FAO56] eqs 6-8, 12, 13, 37-40, p. 24-53; G = 0 (eq. 42).</summary>
    public static double EtoMm(double maxC, double minC, double vapourKPa, double wind2mMPerS, double rs, double ra, double elevationM)
    {
        var mean = (maxC + minC) / 2;
        var slope = 4098 * SaturationKPa(mean) / Math.Pow(mean + 237.3, 2);
        var gamma = 0.665e-3 * 101.3 * Math.Pow((293 - (0.0065 * elevationM)) / 293, 5.26);
        var deficit = ((SaturationKPa(maxC) + SaturationKPa(minC)) / 2) - vapourKPa;
        var longwave = 4.903e-9 * ((Math.Pow(maxC + 273.16, 4) + Math.Pow(minC + 273.16, 4)) / 2)
            * (0.34 - (0.14 * Math.Sqrt(vapourKPa))) * ((1.35 * rs / ((0.75 + (2e-5 * elevationM)) * ra)) - 0.35);
        var net = (0.77 * rs) - longwave;
        return ((0.408 * slope * net) + (gamma * 900 / (mean + 273) * wind2mMPerS * deficit)) / (slope + (gamma * (1 + (0.34 * wind2mMPerS))));
    }

    /// <summary>ETo from temperatures alone, mm per day. Source: [FAO56] eq. 52, p. 64; Ra as mm (x 0.408, table 3, p. 20).</summary>
    public static double FromTemperaturesMm(double maxC, double minC, double ra) =>
        0.0023 * (((maxC + minC) / 2) + 17.8) * Math.Sqrt(maxC - minC) * 0.408 * ra;
}
