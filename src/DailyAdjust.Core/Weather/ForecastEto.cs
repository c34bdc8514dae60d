namespace DailyAdjust.Core.Weather;

/// <summary>
/// Reference ET of a forecast day: [FAO56] eq. 52 of its temperatures, times what the site's own last 30 days were of theirs. The
/// scaling is what [FAO56] ch. 3, p. 64 asks for: the equation is to be calibrated at the place.
/// </summary>
public static class ForecastEto
{
    private const int DaysOfScale = 30;

    /// <summary>mm, 0 or more, on a grid of 1e-6; null where the day's temperatures are not forecast.</summary>
    /// <param name="day">The sheet's date or later.</param>
    /// <param name="sheetDate">The date of the morning.</param>
    /// <param name="forecast">In any order; of two for one date the last counts.</param>
    /// <param name="known">Days of weather; those that were expected or lack temperatures do not scale.</param>
    /// <param name="latitudeDeg">The site's, north positive.</param>
    public static double? For(DateOnly day, DateOnly sheetDate, IReadOnlyList<ForecastDay> forecast, IReadOnlyList<WeatherDay> known, double latitudeDeg)
    {
        if (forecast.LastOrDefault(f => f.Date == day) is not { AirTemperatureMaxC: { } highest, AirTemperatureMinC: { } lowest })
        {
            return null;
        }

        var plain = Plain(day, highest, lowest, latitudeDeg);
        return Math.Round(plain * Scale(sheetDate, known, latitudeDeg), 6, MidpointRounding.AwayFromZero);
    }

    /// <summary>What the site's days were of the plain equation; 1 where no day tells.</summary>
    private static double Scale(DateOnly sheetDate, IReadOnlyList<WeatherDay> known, double latitudeDeg)
    {
        var (measured, plain) = Sums(sheetDate, known, latitudeDeg);
        return plain > 0 ? measured / plain : 1;
    }

    /// <summary>Of the site's last 30 days: their reference ET, and what the plain equation gives of their temperatures, mm.</summary>
    internal static (double MeasuredMm, double PlainMm) Sums(DateOnly sheetDate, IReadOnlyList<WeatherDay> known, double latitudeDeg)
    {
        double measured = 0, plain = 0;
        foreach (var day in known)
        {
            if (day.Date < sheetDate && day.Date >= sheetDate.AddDays(-DaysOfScale)
                && day.Basis is not (EtoBasis.Expected or EtoBasis.Open)
                && day is { EtoMm: { } eto, AirTemperatureMaxC: { } highest, AirTemperatureMinC: { } lowest })
            {
                measured += eto;
                plain += Plain(day.Date, highest, lowest, latitudeDeg);
            }
        }

        return (measured, plain);
    }

    private static double Plain(DateOnly date, double highest, double lowest, double latitudeDeg) =>
        HargreavesSamani.EtoMm(highest, lowest, Sun.ExtraterrestrialRadiationMJPerM2Day(latitudeDeg, date.DayOfYear));
}
