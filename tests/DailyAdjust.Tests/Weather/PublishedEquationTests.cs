using System.Globalization;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

/// <summary>Every printed value of FAO 56 that the computation covers, from the tables in Published/.</summary>
public sealed class PublishedEquationTests
{
    private static readonly Dictionary<string, Func<double[], double>> Atmospheric = new(StringComparer.Ordinal)
    {
        ["pressure"] = a => Atmosphere.PressureKPa(a[0]),
        ["psychrometric constant"] = a => Atmosphere.PsychrometricConstantKPaPerC(a[0]),
        ["saturation vapour pressure"] = a => Atmosphere.SaturationVapourPressureKPa(a[0]),
        ["slope"] = a => Atmosphere.SlopeKPaPerC(a[0]),
        ["mean saturation vapour pressure"] = a => Atmosphere.MeanSaturationVapourPressureKPa(a[0], a[1]),
        ["vapour pressure from extremes of humidity"] = a => Atmosphere.VapourPressureFromExtremesKPa(a[0], a[1], a[2], a[3]),
        ["vapour pressure from mean humidity"] = a => Atmosphere.VapourPressureFromMeanHumidityKPa(a[0], a[1], a[2]),
        ["vapour pressure from dew point"] = a => Atmosphere.VapourPressureFromDewPointKPa(a[0]),
        ["vapour pressure of an hour"] = a => Atmosphere.VapourPressureKPa(a[0], a[1]),
        ["deficit with extremes of humidity"] = a =>
            Atmosphere.MeanSaturationVapourPressureKPa(a[0], a[1]) - Atmosphere.VapourPressureFromExtremesKPa(a[0], a[1], a[2], a[3]),
        ["wind speed at 2 m"] = a => Atmosphere.WindSpeed2mMPerS(a[0], a[1]),
    };

    private static readonly Dictionary<string, Func<double[], double>> Radiative = new(StringComparer.Ordinal)
    {
        ["latitude"] = a => Sun.LatitudeRad(a[0]),
        ["day of year"] = a => new DateOnly((int)a[0], (int)a[1], (int)a[2]).DayOfYear,
        ["inverse relative distance"] = a => Sun.InverseRelativeDistance((int)a[0]),
        ["declination"] = a => Sun.DeclinationRad((int)a[0]),
        ["seasonal correction"] = a => Sun.SeasonalCorrectionH((int)a[0]),
        ["sunset hour angle"] = a => Sun.SunsetHourAngleRad(a[0], (int)a[1]),
        ["daylight hours"] = a => Sun.DaylightHours(a[0], (int)a[1]),
        ["extraterrestrial radiation"] = a => Ra(a[0], a[1]),
        ["extraterrestrial radiation as water"] = a => HargreavesSamani.MmPerMJPerM2 * Ra(a[0], a[1]),
        ["solar radiation from sunshine"] = a => Radiation.SolarFromSunshineMJPerM2(a[0], Sun.DaylightHours(a[1], (int)a[2]), Ra(a[1], a[2])),
        ["solar radiation from temperatures"] = a => Radiation.SolarFromTemperatureRangeMJPerM2Day(a[0], 0, a[1], Ra(a[2], a[3]), a[4]),
        ["clear-sky radiation"] = a => Radiation.ClearSkyMJPerM2(Ra(a[0], a[1]), a[2]),
        ["black body"] = a => Radiation.BlackBodyMJPerM2Day(a[0]),
        ["net shortwave"] = a => Radiation.NetShortwaveMJPerM2(a[0]),
        ["net shortwave of radiation from temperatures"] = a =>
            Radiation.NetShortwaveMJPerM2(Radiation.SolarFromTemperatureRangeMJPerM2Day(a[0], 0, a[1], Ra(a[2], a[3]), a[4])),
        ["net longwave of a day"] = a => NetLongwave(Day(a[0], a[1], a[2], a[3], 0, a[4], a[5], a[6])),
        ["net radiation of a day"] = a => ReferenceEtDaily.NetRadiationMJPerM2Day(Day(a[0], a[1], a[2], a[3], 0, a[4], a[5], a[6])),
        ["net longwave with radiation from temperatures"] = a => NetLongwave(Coastal(a)),
        ["net radiation with radiation from temperatures"] = a => ReferenceEtDaily.NetRadiationMJPerM2Day(Coastal(a)),
        ["solar time angle at 16.25 W, 1 October, clock 15 W"] = a => Sun.SolarTimeAngleRad(Dakar(a[0]), -16.25, 274),
        ["hour from 16.22 N, 16.25 W, 1 October, clock 15 W"] = a => DakarRa(a[0]),
        ["clear-sky hour at 16.22 N, 16.25 W, 1 October, clock 15 W, 8 m"] = a => Radiation.ClearSkyMJPerM2(DakarRa(a[0]), 8),
    };

    private static readonly Dictionary<string, Func<double[], double>> Et = new(StringComparer.Ordinal)
    {
        ["sunshine day: net shortwave"] = a => NetShortwave(SunshineDay(a)),
        ["sunshine day: net longwave"] = a => NetLongwave(SunshineDay(a)),
        ["sunshine day: net radiation"] = a => ReferenceEtDaily.NetRadiationMJPerM2Day(SunshineDay(a)),
        ["sunshine day: reference ET"] = a => ReferenceEtDaily.EtoMm(SunshineDay(a) with { SoilHeatFluxMJPerM2Day = a[8] }),
        ["humidity and sunshine day: net shortwave"] = a => NetShortwave(HumidityDay(a)),
        ["humidity and sunshine day: net longwave"] = a => NetLongwave(HumidityDay(a)),
        ["humidity and sunshine day: net radiation"] = a => ReferenceEtDaily.NetRadiationMJPerM2Day(HumidityDay(a)),
        ["humidity and sunshine day: radiation term"] = a => ReferenceEtDaily.EtoMm(HumidityDay(a)) - WindTerm(HumidityDay(a)),
        ["humidity and sunshine day: wind term"] = a => WindTerm(HumidityDay(a)),
        ["humidity and sunshine day: reference ET"] = a => ReferenceEtDaily.EtoMm(HumidityDay(a)),
        ["hour: net longwave"] = a => Radiation.NetShortwaveMJPerM2(a[3]) - ReferenceEtHourly.NetRadiationMJPerM2(Hour(a)),
        ["hour: net radiation"] = a => ReferenceEtHourly.NetRadiationMJPerM2(Hour(a)),
        ["hour: soil heat"] = a => SoilHeat(a),
        ["hour with Cd 0.34: reference ET"] = a => PenmanMonteith.ReferenceEtMm(
            new AirState(a[0], a[2], Atmosphere.SaturationVapourPressureKPa(a[0]) - Atmosphere.VapourPressureKPa(a[0], a[1]), 8),
            ReferenceEtHourly.NetRadiationMJPerM2(Hour(a)) - SoilHeat(a), 37, 0.34),
        ["temperature day: net shortwave"] = a => NetShortwave(TemperatureDay(a)),
        ["temperature day: net longwave"] = a => NetLongwave(TemperatureDay(a)),
        ["temperature day: net radiation"] = a => ReferenceEtDaily.NetRadiationMJPerM2Day(TemperatureDay(a)),
        ["temperature day: deficit"] = a => Atmosphere.MeanSaturationVapourPressureKPa(a[0], a[1]) - TemperatureDay(a).VapourPressureKPa,
        ["temperature day: reference ET"] = a => ReferenceEtDaily.EtoMm(TemperatureDay(a)),
        ["Hargreaves-Samani"] = a => HargreavesSamani.EtoMm(a[0], a[1], a[2]),
    };

    public static TheoryData<string, string, double, double, string> AtmosphereRows() => Rows("Published/atmosphere/fao56.csv");

    public static TheoryData<string, string, double, double, string> RadiationRows() => Rows("Published/radiation/fao56.csv");

    public static TheoryData<string, string, double, double, string> EtRows() => Rows("Published/reference-et/fao56.csv");

    [Theory]
    [MemberData(nameof(AtmosphereRows))]
    public void The_air_is_as_printed(string check, string arguments, double value, double tolerance, string where) =>
        Holds(Atmospheric, check, arguments, value, tolerance, where);

    [Theory]
    [MemberData(nameof(RadiationRows))]
    public void Sun_and_radiation_are_as_printed(string check, string arguments, double value, double tolerance, string where) =>
        Holds(Radiative, check, arguments, value, tolerance, where);

    [Theory]
    [MemberData(nameof(EtRows))]
    public void Reference_et_is_as_printed(string check, string arguments, double value, double tolerance, string where) =>
        Holds(Et, check, arguments, value, tolerance, where);

    private static void Holds(
        Dictionary<string, Func<double[], double>> checks, string check, string arguments, double value, double tolerance, string where)
    {
        var numbers = arguments.Split(' ').Select(a => double.Parse(a, CultureInfo.InvariantCulture)).ToArray();
        var ours = checks[check](numbers);
        Assert.True(Math.Abs(ours - value) <= tolerance + 1e-12, $"{check}({arguments}) = {ours}, printed {value} ± {tolerance} ({where})");
    }

    private static TheoryData<string, string, double, double, string> Rows(string path)
    {
        var data = new TheoryData<string, string, double, double, string>();
        foreach (var row in CheckTable.Read(path))
        {
            data.Add(row["check"], row["arguments"], row.Number("value"), row.Number("tolerance"), row["where"]);
        }

        return data;
    }

    private static double Ra(double latitudeDeg, double dayOfYear) => Sun.ExtraterrestrialRadiationMJPerM2Day(latitudeDeg, (int)dayOfYear);

    private static DailyAir Day(double max, double min, double ea, double rs, double wind, double latitudeDeg, double dayOfYear, double elevationM) => new()
    {
        AirTemperatureMaxC = max,
        AirTemperatureMinC = min,
        VapourPressureKPa = ea,
        SolarRadiationMJPerM2Day = rs,
        WindSpeed2mMPerS = wind,
        ExtraterrestrialRadiationMJPerM2Day = Ra(latitudeDeg, dayOfYear),
        ElevationM = elevationM,
    };

    private static DailyAir SunshineDay(double[] a) =>
        Day(a[0], a[1], a[2], Radiation.SolarFromSunshineMJPerM2(a[4], Sun.DaylightHours(a[5], (int)a[6]), Ra(a[5], a[6])), a[3], a[5], a[6], a[7]);

    private static DailyAir HumidityDay(double[] a) =>
        Day(
            a[0], a[1], Atmosphere.VapourPressureFromExtremesKPa(a[0], a[1], a[2], a[3]),
            Radiation.SolarFromSunshineMJPerM2(a[6], Sun.DaylightHours(a[7], (int)a[8]), Ra(a[7], a[8])),
            Atmosphere.WindSpeed2mMPerS(a[4], a[5]), a[7], a[8], a[9]);

    private static DailyAir TemperatureDay(double[] a) =>
        Day(
            a[0], a[1], Atmosphere.VapourPressureFromDewPointKPa(a[1]),
            Radiation.SolarFromTemperatureRangeMJPerM2Day(a[0], a[1], a[2], Ra(a[4], a[5]), a[6]), a[3], a[4], a[5], a[6]);

    private static DailyAir Coastal(double[] a) =>
        Day(
            a[0], a[1], a[2], Radiation.SolarFromTemperatureRangeMJPerM2Day(a[0], a[1], a[3], Ra(a[4], a[5]), a[6]), 0, a[4], a[5], a[6]);

    private static double NetShortwave(DailyAir day) => Radiation.NetShortwaveMJPerM2(day.SolarRadiationMJPerM2Day);

    private static double NetLongwave(DailyAir day) => NetShortwave(day) - ReferenceEtDaily.NetRadiationMJPerM2Day(day);

    /// <summary>ETo without any radiation: the soil takes all of it up.</summary>
    private static double WindTerm(DailyAir day) =>
        ReferenceEtDaily.EtoMm(day with { SoilHeatFluxMJPerM2Day = ReferenceEtDaily.NetRadiationMJPerM2Day(day) });

    /// <summary>An hour of example 19; by night the example takes Rs/Rso = 0.8.</summary>
    private static HourlyAir Hour(double[] a) => new()
    {
        AirTemperatureC = a[0],
        VapourPressureKPa = Atmosphere.VapourPressureKPa(a[0], a[1]),
        WindSpeed2mMPerS = a[2],
        SolarRadiationMJPerM2 = a[3],
        CloudFactor = a[3] > 0 ? Radiation.CloudFactor(a[3], Radiation.ClearSkyMJPerM2(DakarRa(a[4]), 8)) : Radiation.CloudFactor(0.8),
        ElevationM = 8,
    };

    private static double SoilHeat(double[] a)
    {
        var net = ReferenceEtHourly.NetRadiationMJPerM2(Hour(a));
        return net * (net > 0 ? 0.1 : 0.5);
    }

    private static DateTimeOffset Dakar(double clockHour) =>
        new DateTimeOffset(2001, 10, 1, 0, 0, 0, TimeSpan.FromHours(-1)).AddHours(clockHour);

    private static double DakarRa(double clockHour) =>
        Sun.ExtraterrestrialRadiationMJPerM2(Dakar(clockHour), Dakar(clockHour + 1), 16.22, -16.25, 274);
}
