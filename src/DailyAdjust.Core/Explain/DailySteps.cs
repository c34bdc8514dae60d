using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Explain;

/// <summary>The daily equation term by term. Source: [FAO56] eq. 6, p. 24.</summary>
internal static class DailySteps
{
    public static IEnumerable<Step> Of(DailyAir air, double latitudeDeg, int dayOfYear) =>
        [.. SunSteps.OfDay(latitudeDeg, dayOfYear).SkipLast(1).Append(RaOf(air, latitudeDeg, dayOfYear)), .. Of(air)];

    /// <summary>From the day's inputs on; Ra is one of them.</summary>
    public static IEnumerable<Step> Of(DailyAir air)
    {
        Term max = new("Tmax", air.AirTemperatureMaxC), min = new("Tmin", air.AirTemperatureMinC), ea = new("ea", air.VapourPressureKPa), u2 = new("u2", air.WindSpeed2mMPerS);
        Term mean = new("T", (max.Value + min.Value) / 2), ra = new("Ra", air.ExtraterrestrialRadiationMJPerM2Day), rs = new("Rs", air.SolarRadiationMJPerM2Day);
        Term z = new("z", air.ElevationM), p = new("P", Atmosphere.PressureKPa(z.Value)), gamma = new("gamma", Atmosphere.PsychrometricConstantKPaPerC(z.Value));
        Term es = new("es", Atmosphere.MeanSaturationVapourPressureKPa(max.Value, min.Value)), slope = new("Delta", Atmosphere.SlopeKPaPerC(mean.Value));
        Term rso = new("Rso", Radiation.ClearSkyMJPerM2(ra.Value, z.Value)), f = new("fcd", Radiation.CloudFactor(rs.Value, rso.Value));
        Term rns = new("Rns", Radiation.NetShortwaveMJPerM2(rs.Value)), rnl = new("Rnl", Radiation.NetLongwaveMJPerM2Day(max.Value, min.Value, ea.Value, f.Value));
        Term rn = new("Rn", ReferenceEtDaily.NetRadiationMJPerM2Day(air)), g = new("G", air.SoilHeatFluxMJPerM2Day);
        yield return Step.Given("highest temperature", "Tmax", max.Value, "°C", "readings");
        yield return Step.Given("lowest temperature", "Tmin", min.Value, "°C", "readings");
        yield return Step.Given("actual vapour pressure", "ea", ea.Value, "kPa", "from humidity or dew point, [FAO56] eqs 14, 17, 19");
        yield return Step.Given("wind at 2 m", "u2", u2.Value, "m/s", "[FAO56] eq. 47, p. 56");
        yield return Step.Given("solar radiation", "Rs", rs.Value, "MJ/m2", "readings, or estimated as said above");
        yield return Step.Given("soil heat flux", "G", g.Value, "MJ/m2", "[FAO56] eq. 42, p. 54");
        yield return Step.Of("mean temperature", "T", "({Tmax} + {Tmin}) / 2", mean.Value, "°C", "[FAO56] eq. 9, p. 33", max, min);
        yield return Step.Of("air pressure", "P", "101.3 * ((293 - 0.0065 * {z}) / 293) ^ 5.26", p.Value, "kPa", "[FAO56] eq. 7, p. 31", z);
        yield return Step.Of("psychrometric constant", "gamma", "0.000665 * {P}", gamma.Value, "kPa/°C", "[FAO56] eq. 8, p. 32", p);
        yield return Step.Of(
            "saturation vapour pressure", "es", "(0.6108 * exp(17.27 * {Tmax} / ({Tmax} + 237.3)) + 0.6108 * exp(17.27 * {Tmin} / ({Tmin} + 237.3))) / 2",
            es.Value, "kPa", "[FAO56] eq. 12, p. 36", max, min);
        yield return Step.Of(
            "slope of its curve", "Delta", "4098 * 0.6108 * exp(17.27 * {T} / ({T} + 237.3)) / ({T} + 237.3) ^ 2", slope.Value, "kPa/°C", "[FAO56] eq. 13, p. 37", mean);
        yield return Step.Of("clear-sky radiation", "Rso", "(0.75 + 0.00002 * {z}) * {Ra}", rso.Value, "MJ/m2", "[FAO56] eq. 37, p. 51", z, ra);
        yield return rso.Value > 0
            ? Step.Of("cloud factor", "fcd", "1.35 * min(1, max(0.3, {Rs} / {Rso})) - 0.35", f.Value, "", "[FAO56] eq. 39, p. 52", rs, rso)
            : Step.Given("cloud factor where the sun does not rise", "fcd", f.Value, "", "[ASCE05] eqs 18 and 45");
        yield return Step.Of("net shortwave radiation", "Rns", "(1 - 0.23) * {Rs}", rns.Value, "MJ/m2", "[FAO56] eq. 38, p. 51", rs);
        yield return Step.Of(
            "net longwave radiation", "Rnl", "0.000000004903 * (({Tmax} + 273.16) ^ 4 + ({Tmin} + 273.16) ^ 4) / 2 * (0.34 - 0.14 * sqrt({ea})) * {fcd}",
            rnl.Value, "MJ/m2", "[FAO56] eq. 39, p. 52", max, min, ea, f);
        yield return Step.Of("net radiation", "Rn", "{Rns} - {Rnl}", rn.Value, "MJ/m2", "[FAO56] eq. 40, p. 53", rns, rnl);
        yield return Step.Of(
            "reference ET", "ETo",
            "max(0, (0.408 * {Delta} * ({Rn} - {G}) + {gamma} * 900 / ({T} + 273) * {u2} * ({es} - {ea})) / ({Delta} + {gamma} * (1 + 0.34 * {u2})))",
            ReferenceEtDaily.EtoMm(air), "mm", "[FAO56] eq. 6, p. 24", slope, rn, g, gamma, mean, u2, es, ea);
    }

    private static Step RaOf(DailyAir air, double latitudeDeg, int dayOfYear) =>
        SunSteps.OfDay(latitudeDeg, dayOfYear).Last() with { Value = air.ExtraterrestrialRadiationMJPerM2Day };
}
