using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Explain;

/// <summary>The hourly equation term by term. Source: [ASCE05] eq. 1 and table 1.</summary>
internal static class HourSteps
{
    public static IReadOnlyList<Step> Of(Site site, WeatherSource source, HourOfDay hour, WeatherQuantity? humidity)
    {
        var air = hour.Air;
        var dayOfYear = site.Clock.DateOf(hour.Begin).DayOfYear;
        var elevation = Sun.ElevationRad(hour.Begin.AddMinutes(30), site.LatitudeDeg, site.LongitudeDeg, dayOfYear);
        Term t = new("T", air.AirTemperatureC), moisture = new(humidity == WeatherQuantity.DewPoint ? "Tdew" : "RH", hour.Moisture), u = new("uz", hour.WindSpeedMPerS), h = new("zw", source.WindHeightM);
        Term ra = new("Ra", Sun.ExtraterrestrialRadiationMJPerM2(hour.Begin, hour.Begin.AddHours(1), site.LatitudeDeg, site.LongitudeDeg, dayOfYear));
        Term z = new("z", air.ElevationM), rso = new("Rso", Radiation.ClearSkyMJPerM2(ra.Value, z.Value)), rs = new("Rs", air.SolarRadiationMJPerM2), f = new("fcd", air.CloudFactor);
        List<Step> steps =
        [
            Step.Given("temperature", "T", t.Value, "°C", "readings"),
            moisture.Symbol is "RH"
                ? Step.Given("relative humidity", "RH", moisture.Value, "%", "readings")
                : Step.Given("dew point", "Tdew", moisture.Value, "°C", "readings"),
            Step.Given("wind at the anemometer", "uz", u.Value, "m/s", "readings"),
            Step.Given("solar radiation", "Rs", rs.Value, "MJ/m2", "readings"),
            Step.Given("sun above the horizon at mid-hour", "beta", elevation, "rad", "[ASCE05] eq. 62"),
            Step.Given("extraterrestrial radiation", "Ra", ra.Value, "MJ/m2", "[FAO56] eqs 28-33"),
            h.Value == Atmosphere.ReferenceWindHeightM
                ? Step.Of("wind at 2 m", "u2", "{uz}", air.WindSpeed2mMPerS, "m/s", "measured at 2 m", u)
                : Step.Of("wind at 2 m", "u2", "{uz} * 4.87 / ln(67.8 * {zw} - 5.42)", air.WindSpeed2mMPerS, "m/s", "[FAO56] eq. 47, p. 56", u, h),
            moisture.Symbol is "RH"
                ? Step.Of("actual vapour pressure", "ea", "{RH} / 100 * 0.6108 * exp(17.27 * {T} / ({T} + 237.3))", air.VapourPressureKPa, "kPa", "[FAO56] eq. 54, p. 74", moisture, t)
                : Step.Of("actual vapour pressure", "ea", "0.6108 * exp(17.27 * {Tdew} / ({Tdew} + 237.3))", air.VapourPressureKPa, "kPa", "[FAO56] eq. 14, p. 37", moisture),
            Step.Of("clear-sky radiation", "Rso", "(0.75 + 0.00002 * {z}) * {Ra}", rso.Value, "MJ/m2", "[FAO56] eq. 37, p. 51", z, ra),
            elevation >= CloudFactorHold.LeastElevationRad && rso.Value > 0
                ? Step.Of("cloud factor", "fcd", "1.35 * min(1, max(0.3, {Rs} / {Rso})) - 0.35", f.Value, "", "[ASCE05] eq. 45", rs, rso)
                : Step.Given("cloud factor, held: the sun is below 0.3 rad", "fcd", f.Value, "", "[ASCE05] eq. 46"),
            .. Of(air),
        ];
        return steps;
    }

    /// <summary>From the hour's inputs on.</summary>
    public static IEnumerable<Step> Of(HourlyAir air)
    {
        Term t = new("T", air.AirTemperatureC), ea = new("ea", air.VapourPressureKPa), u2 = new("u2", air.WindSpeed2mMPerS), f = new("fcd", air.CloudFactor), rs = new("Rs", air.SolarRadiationMJPerM2);
        Term z = new("z", air.ElevationM), gamma = new("gamma", Atmosphere.PsychrometricConstantKPaPerC(z.Value));
        Term es = new("es", Atmosphere.SaturationVapourPressureKPa(t.Value)), slope = new("Delta", Atmosphere.SlopeKPaPerC(t.Value));
        Term rnl = new("Rnl", Radiation.NetLongwaveMJPerM2Hour(t.Value, ea.Value, f.Value)), rn = new("Rn", ReferenceEtHourly.NetRadiationMJPerM2(air));
        var day = rn.Value > 0;
        Term share = new("g", day ? ReferenceEtHourly.SoilHeatShareDay : ReferenceEtHourly.SoilHeatShareNight), cd = new("Cd", day ? ReferenceEtHourly.CdDay : ReferenceEtHourly.CdNight);
        Term g = new("G", share.Value * rn.Value);
        yield return Step.Of("psychrometric constant", "gamma", "0.000665 * 101.3 * ((293 - 0.0065 * {z}) / 293) ^ 5.26", gamma.Value, "kPa/°C", "[FAO56] eqs 7 and 8", z);
        yield return Step.Of("saturation vapour pressure", "es", "0.6108 * exp(17.27 * {T} / ({T} + 237.3))", es.Value, "kPa", "[FAO56] eq. 11, p. 36", t);
        yield return Step.Of("slope of its curve", "Delta", "4098 * {es} / ({T} + 237.3) ^ 2", slope.Value, "kPa/°C", "[FAO56] eq. 13, p. 37", es, t);
        yield return Step.Of(
            "net longwave radiation", "Rnl", "0.0000000002042 * ({T} + 273.16) ^ 4 * (0.34 - 0.14 * sqrt({ea})) * {fcd}", rnl.Value, "MJ/m2", "[ASCE05] eq. 44", t, ea, f);
        yield return Step.Of("net radiation", "Rn", "(1 - 0.23) * {Rs} - {Rnl}", rn.Value, "MJ/m2", "[ASCE05] eqs 42-43", rs, rnl);
        yield return Step.Given("share of net radiation that goes into the soil, by " + (day ? "day" : "night"), "g", share.Value, "", "[ASCE05] table 1");
        yield return Step.Given("Cd, by " + (day ? "day" : "night"), "Cd", cd.Value, "", "[ASCE05] table 1");
        yield return Step.Of("soil heat flux", "G", "{g} * {Rn}", g.Value, "MJ/m2", "[ASCE05] table 1", share, rn);
        yield return Step.Of(
            "reference ET of the hour", "ETh", "(0.408 * {Delta} * ({Rn} - {G}) + {gamma} * 37 / ({T} + 273) * {u2} * ({es} - {ea})) / ({Delta} + {gamma} * (1 + {Cd} * {u2}))",
            ReferenceEtHourly.EtoMm(air), "mm", "[ASCE05] eq. 1", slope, rn, g, gamma, t, u2, es, ea, cd);
    }
}
