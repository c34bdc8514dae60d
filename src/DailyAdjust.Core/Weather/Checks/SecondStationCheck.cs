using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>
/// Two stations whose temperatures differ otherwise than they are used to: the one that left its own course is wrong. The usual
/// difference is the middle one (median), so that a sensor that has gone wrong for a week does not become the measure.
/// </summary>
internal static class SecondStationCheck
{
    private const double MostC = 6;
    private const int DaysOfDifference = 30;
    private const int LeastDays = 7;
    private const int DaysOfOwnMean = 7;

    public static WeatherCheck About { get; } = new(
        "second_station",
        "a day's temperature that differs from the next station's otherwise than it used to",
        "the difference of the daily means ((highest + lowest) / 2) departs by more than 6 °C from the middle one of the last 30 days (at least 7 known); wrong is the station that is farther "
            + "from its own mean of the last 7 days on which the two agreed",
        WeatherCheck.IsSetAside + ", that day's temperatures of the station that is wrong",
        "common practice",
        [WeatherQuantity.AirTemperature]);

    /// <summary>For every station why its temperatures are wrong; null = they are not known to be.</summary>
    /// <param name="sources">In order of preference.</param>
    /// <param name="histories">Theirs.</param>
    public static string?[] Find(IReadOnlyList<WeatherSource> sources, IReadOnlyList<StationHistory> histories)
    {
        var why = new string?[sources.Count];
        for (var first = 0; first < sources.Count; first++)
        {
            if (why[first] is not null || histories[first].Today.AirTemperatureMeanC is null)
            {
                continue;
            }

            for (var second = first + 1; second < sources.Count; second++)
            {
                if (why[second] is null && histories[second].Today.AirTemperatureMeanC is not null)
                {
                    Judge(sources, histories, first, second, why);
                    break;
                }
            }
        }

        return why;
    }

    private static void Judge(IReadOnlyList<WeatherSource> sources, IReadOnlyList<StationHistory> histories, int first, int second, string?[] why)
    {
        var (a, b) = (histories[first], histories[second]);
        List<double> differences = [];
        for (var back = 1; back <= DaysOfDifference; back++)
        {
            if (Difference(a, b, back) is { } difference)
            {
                differences.Add(difference);
            }
        }

        var departs = differences.Count < LeastDays ? 0 : Difference(a, b, 0)!.Value - Middle.Of(differences);
        if (Math.Abs(departs) <= MostC)
        {
            return;
        }

        var usual = Middle.Of(differences);
        var wrong = FromOwnMean(a, a, b, usual) > FromOwnMean(b, a, b, usual) ? first : second;
        if (!sources[wrong].Accepts(About, WeatherQuantity.AirTemperature))
        {
            why[wrong] = string.Create(
                CultureInfo.InvariantCulture,
                $"differs from station \"{sources[first + second - wrong].Id}\" by {Math.Abs(departs):0.0} °C more than usual");
        }
    }

    private static double? Difference(StationHistory a, StationHistory b, int back) =>
        a[back]?.AirTemperatureMeanC - b[back]?.AirTemperatureMeanC;

    private static double FromOwnMean(StationHistory one, StationHistory a, StationHistory b, double usual)
    {
        var (sum, days) = (0.0, 0);
        for (var back = 1; back <= DaysOfDifference && days < DaysOfOwnMean; back++)
        {
            if (Difference(a, b, back) is { } difference && Math.Abs(difference - usual) <= MostC)
            {
                sum += one[back]!.AirTemperatureMeanC!.Value;
                days++;
            }
        }

        // The middle difference itself is one on which they agreed.
        return Math.Abs(one.Today.AirTemperatureMeanC!.Value - (sum / days));
    }
}
