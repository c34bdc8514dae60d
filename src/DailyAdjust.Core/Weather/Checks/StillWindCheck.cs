using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>Wind that never moves all day: the cup is stuck, iced or spun with webs, or the cable is off.</summary>
internal static class StillWindCheck
{
    /// <summary>Cups start to turn at about this speed. Common practice.</summary>
    private const double StartsAtMPerS = 0.5;

    public static WeatherCheck About { get; } = new(
        "still_wind",
        "wind that never moves",
        "at least 90 % of the day is there and all of it is one value of 0.5 m/s or less (0, or the speed at which the cup starts)",
        WeatherCheck.IsSetAside + ", the whole day's wind",
        "common practice",
        [WeatherQuantity.WindSpeed]);

    public static void Run(CheckedRows rows)
    {
        var (from, to) = rows.OfDay();
        var (still, known) = (double.NaN, 0L);
        for (var row = from; row < to; row++)
        {
            var value = rows[row].WindSpeedMPerS;
            if (double.IsNaN(value))
            {
                continue;
            }

            if (value > StartsAtMPerS || (known > 0 && value != still))
            {
                return;
            }

            still = value;
            known += (rows[row].End - rows[row].Begin).Ticks;
        }

        if ((double)known / rows.Notes.Day.Length.Ticks >= DayInputs.LeastShare - DayInputs.ShareTolerance)
        {
            rows.SetAside(About, WeatherQuantity.WindSpeed, from, to, "m/s", "the wind never moved all day");
        }
    }
}
