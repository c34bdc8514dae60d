using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>A day's sum of what comes with the sun: its missing daylight is made up for in proportion to extraterrestrial radiation.</summary>
/// <param name="Value">The day's sum; NaN = unknown.</param>
/// <param name="Missing">Daylight that was made up for.</param>
internal readonly record struct DaylightSum(double Value, TimeSpan Missing)
{
    public static DaylightSum Unknown => new(double.NaN, TimeSpan.Zero);

    public bool IsKnown => !double.IsNaN(Value);

    /// <summary>Unknown where less than 90 % of the intervals with the sun above the horizon are there.</summary>
    public static DaylightSum Of(StationWindow window, WeatherQuantity quantity)
    {
        var (site, day, step) = (window.Site, window.Day, window.Source.Interval);
        double RaOf(DateTimeOffset begin, DateTimeOffset end) => Sun.ExtraterrestrialRadiationMJPerM2(
            begin, end, site.LatitudeDeg, site.LongitudeDeg, day.Date.DayOfYear);

        List<Sample> ofDay = [.. window.Series(quantity).Where(s => day.Holds(s.Begin))];
        if (ofDay.Count == 0)
        {
            return Unknown;
        }

        var (allRa, daylight) = (0.0, TimeSpan.Zero);
        for (var begin = window.FirstInterval; begin < day.End; begin += step)
        {
            var ra = RaOf(begin, begin + step);
            allRa += ra;
            daylight += ra > 0 ? step : TimeSpan.Zero;
        }

        var (sum, knownRa, known) = (0.0, 0.0, TimeSpan.Zero);
        foreach (var sample in ofDay)
        {
            var ra = RaOf(sample.Begin, sample.End);
            sum += sample.Value * sample.Length.TotalHours;
            knownRa += ra;
            known += ra > 0 ? sample.Length : TimeSpan.Zero;
        }

        if (known / TimeSpan.FromHours(1) < (daylight / TimeSpan.FromHours(1) * DayInputs.LeastShare) - DayInputs.ShareTolerance)
        {
            return Unknown;
        }

        var missing = daylight - known;
        return missing < step / 2 ? new(sum, TimeSpan.Zero) : new(sum * allRa / knownRa, missing);
    }
}
