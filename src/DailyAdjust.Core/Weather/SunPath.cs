namespace DailyAdjust.Core.Weather;

/// <summary>What the sun's day and its radiation share: sines and cosines of one latitude and one declination, taken once.</summary>
internal readonly struct SunPath
{
    /// <summary>The earth's year, the same at every place: sine and cosine of the declination and the inverse relative distance, by day of the year from 1.</summary>
    private static readonly (double Sine, double Cosine, double InverseDistance)[] _year = [.. Enumerable.Range(1, 366).Select(OnDay)];

    private readonly double _inverseDistance;
    private readonly double _sines;
    private readonly double _cosines;

    /// <param name="latitudeDeg">North positive, -90 to 90.</param>
    /// <param name="dayOfYear">1 to 366.</param>
    public SunPath(double latitudeDeg, int dayOfYear)
    {
        var latitude = Math.SinCos(Sun.LatitudeRad(latitudeDeg));
        var earth = _year[Sun.OfYear(dayOfYear) - 1];
        _inverseDistance = earth.InverseDistance;
        _sines = latitude.Sin * earth.Sine;
        _cosines = latitude.Cos * earth.Cosine;

        // tan φ tan δ out of what eq. 21 needs anyway. Beyond the polar circles it leaves -1..1 for a part of the year.
        var cosine = Math.Clamp(-_sines / _cosines, -1, 1);
        SunsetRad = Math.Acos(cosine);
        SunsetSine = Math.Sqrt((1 - cosine) * (1 + cosine));
    }

    /// <summary>Sunset hour angle, rad. Source: [FAO56] eq. 25, p. 46.</summary>
    public double SunsetRad { get; }

    /// <summary>Its sine, 0 to 1.</summary>
    public double SunsetSine { get; }

    /// <summary>Between two solar time angles that lie within daylight, MJ/m², 0 or more. Source: [FAO56] eq. 28, p. 47.</summary>
    /// <param name="spanRad">The later less the earlier.</param>
    /// <param name="sines">The sine of the later less that of the earlier.</param>
    public double RadiationMJPerM2(double spanRad, double sines) =>
        Math.Max(0, 12 * 60 / Math.PI * Sun.SolarConstantMJPerM2Min * _inverseDistance * ((spanRad * _sines) + (_cosines * sines)));

    private static (double Sine, double Cosine, double InverseDistance) OnDay(int dayOfYear)
    {
        var (sine, cosine) = Math.SinCos(Sun.DeclinationRad(dayOfYear));
        return (sine, cosine, Sun.InverseRelativeDistance(dayOfYear));
    }
}
