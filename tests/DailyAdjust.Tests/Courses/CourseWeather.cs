using System.Globalization;
using System.Text;
using DailyAdjust.Tests.Plain;

namespace DailyAdjust.Tests.Courses;

/// <summary>Invented weather of a mid-latitude course by the hour: seasons, days and nights, showers and dry spells.</summary>
internal static class CourseWeather
{
    private const double RainyDays = 0.28;

    /// <summary>A file with a header and 24 rows a day, whose stamp is the end of the hour on the standard clock. A day's weather depends on its date and the seed alone.</summary>
    public static string Hourly(DateOnly from, DateOnly through, ulong seed)
    {
        var text = new StringBuilder("Time,Temp (C),RH (%),Wind (m/s),Solar (W/m2),Rain (mm)\n");
        for (var date = from; date <= through; date = date.AddDays(1))
        {
            var dice = new Dice((seed * 1_000_003) + (ulong)date.DayNumber);
            var season = Math.Cos(2 * Math.PI * (date.DayOfYear - 196) / 365.25);
            var mean = 11 + (14 * season) + dice.Between(-4, 4);
            var isRainy = dice.Chance(RainyDays);
            var (rainFrom, rainHours, shower) = (dice.Whole(0, 21), dice.Whole(1, 5), dice.Between(0.2, 7, 1));
            var sun = (isRainy ? 0.45 : dice.Between(0.75, 1)) * (620 + (330 * season));
            var wind = dice.Between(0.8, 4);
            for (var hour = 1; hour <= 24; hour++)
            {
                // The middle of the hour, warmest at 15 and sunny from 6 to 18 with the season's hours beside it.
                var at = hour - 0.5;
                var warmth = Math.Cos(2 * Math.PI * (at - 15) / 24);
                var height = Math.Max(0, Math.Sin(Math.PI * (at - 6 + season) / (12 + (2 * season))));
                var rain = isRainy && hour > rainFrom && hour <= rainFrom + rainHours ? shower : 0;
                var stamp = date.ToDateTime(TimeOnly.MinValue).AddHours(hour);
                text.Append(CultureInfo.InvariantCulture, $"{stamp:yyyy-MM-dd HH:mm},{mean + (6 * warmth):0.0},{Math.Clamp(68 - (22 * warmth) + (isRainy ? 18 : 0), 15, 100):0},{wind + (0.8 * warmth):0.0},{sun * height:0},{rain:0.0}\n");
            }
        }

        return text.ToString();
    }
}
