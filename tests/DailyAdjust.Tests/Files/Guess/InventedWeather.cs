using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Plain;

namespace DailyAdjust.Tests.Files.Guess;

/// <summary>Invented weather over the example site: the sun stands where it should, every third day is cloudy, a shower now and then.</summary>
internal static class InventedWeather
{
    public static IReadOnlyList<Reading> Of(DateOnly first, int days, TimeSpan interval, Dice dice)
    {
        var place = GuessedFile.Place;
        var readings = new List<Reading>();
        for (var day = 0; day < days; day++)
        {
            var date = first.AddDays(day);
            var cloudy = day % 3 == 2;
            var (begin, end) = (place.Clock.DayStart(date), place.Clock.DayEnd(date));
            while (begin < end)
            {
                var hour = place.Clock.ToLocal(begin).TimeOfDay.TotalHours;
                var clear = 0.75 * Sun.ExtraterrestrialRadiationMJPerM2(begin, begin + interval, place.LatitudeDeg, place.LongitudeDeg, date.DayOfYear);
                readings.Add(new Reading
                {
                    Begin = begin,
                    End = begin + interval,
                    AirTemperatureC = 18 + (8 * Math.Sin((hour - 9) * Math.PI / 12)) + dice.Between(-0.5, 0.5),
                    RelativeHumidityPercent = Math.Round(60 - (25 * Math.Sin((hour - 9) * Math.PI / 12))),
                    WindSpeedMPerS = 2 + dice.Between(0, 3),
                    SolarRadiationMJPerM2 = clear * (cloudy ? dice.Between(0.2, 0.8) : 1),
                    RainMm = cloudy && dice.Chance(0.08) ? 0.254 * dice.Whole(1, 20) : 0,
                });
                begin += interval;
            }
        }

        return readings;
    }
}
