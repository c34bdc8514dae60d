using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Explain;

/// <summary>The sun of a day, up to extraterrestrial radiation. Source: [FAO56] ch. 3, p. 45-49.</summary>
internal static class SunSteps
{
    public static IEnumerable<Step> OfDay(double latitudeDeg, int dayOfYear)
    {
        double latitude = Sun.LatitudeRad(latitudeDeg), distance = Sun.InverseRelativeDistance(dayOfYear);
        double declination = Sun.DeclinationRad(dayOfYear), sunset = Sun.SunsetHourAngleRad(latitudeDeg, dayOfYear);
        Term phi = new("phi", latitude), delta = new("delta", declination), omega = new("ws", sunset);
        yield return Step.Given("day of the year", "J", dayOfYear, "", "");
        yield return Step.Of("latitude", "phi", "pi / 180 * {lat}", latitude, "rad", "[FAO56] eq. 22", new Term("lat", latitudeDeg));
        yield return Step.Of("inverse relative distance Earth-Sun", "dr", "1 + 0.033 * cos(2 * pi / 365 * {J})", distance, "", "[FAO56] eq. 23, p. 46", new Term("J", dayOfYear));
        yield return Step.Of("solar declination", "delta", "0.409 * sin(2 * pi / 365 * {J} - 1.39)", declination, "rad", "[FAO56] eq. 24, p. 46", new Term("J", dayOfYear));
        yield return Step.Of("sunset hour angle", "ws", "arccos(max(-1, min(1, -tan({phi}) * tan({delta}))))", sunset, "rad", "[FAO56] eq. 25, p. 46", phi, delta);
        yield return Step.Of(
            "extraterrestrial radiation", "Ra",
            "24 * 60 / pi * 0.082 * {dr} * ({ws} * sin({phi}) * sin({delta}) + cos({phi}) * cos({delta}) * sin({ws}))",
            Sun.ExtraterrestrialRadiationMJPerM2Day(latitudeDeg, dayOfYear), "MJ/m2", "[FAO56] eq. 21, p. 46", new Term("dr", distance), omega, phi, delta);
    }
}
