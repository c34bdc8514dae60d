using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>
/// Rain of a station that reports a running total: what the total grew by from one reading to the next. A total that fell began at 0 again.
/// </summary>
/// <remarks>
/// The first total of all has nothing to be held against, so its interval's rain is missing. Rain that fell while nothing was reported, within one date, is
/// taken as fallen when the total was next reported. A silence over midnight over which the total did not grow is dry; one over which it grew
/// is missing in both days, for no one knows which of them has it. So is a silence of more than a day.
/// </remarks>
internal static class RainCounter
{
    /// <summary>A day looks back at 30 hours; what a total says must not depend on anything before that.</summary>
    private static readonly TimeSpan LongestSilence = TimeSpan.FromHours(24);

    /// <summary>What a total may differ by and still be the same: the last digit of a converted number, mm.</summary>
    private const double SameMm = 1e-6;

    /// <summary>A total that fell, but not below this share of what it was, did not begin again: it is wrong. Common practice.</summary>
    private const double MostAfterReset = 0.5;

    /// <summary>The readings with their rain, and what could not be used.</summary>
    /// <param name="station">Their station.</param>
    /// <param name="readings">Ascending by begin.</param>
    /// <param name="clock">The site's: rain is known of a date.</param>
    public static (IReadOnlyList<Reading> Readings, IReadOnlyList<SetAsideValue> SetAside) ToRain(string station, IReadOnlyList<Reading> readings, SiteClock clock)
    {
        if (!readings.Any(r => !double.IsNaN(r.RainCounterMm)))
        {
            return (readings, []);
        }

        var rain = new List<Reading>(readings.Count);
        var setAside = new List<SetAsideValue>();
        var silent = new List<Reading>();
        Reading? before = null;
        foreach (var reading in readings)
        {
            if (double.IsNaN(reading.RainCounterMm))
            {
                silent.Add(reading);
                continue;
            }

            var (mm, why) = before is null ? (double.NaN, null) : Since(before, reading, clock);
            if (why is not null)
            {
                setAside.Add(new(station, reading.Begin, Text(reading), why));
            }

            rain.AddRange(double.IsNaN(mm) ? silent : Dry(before!.End, silent, reading.Begin, clock));
            rain.Add(reading with { RainMm = mm });
            silent.Clear();
            before = reading;
        }

        rain.AddRange(silent);
        return (rain, setAside);
    }

    /// <summary>What fell since the last total; NaN = not known, and why if that is a fault.</summary>
    private static (double Mm, string? Why) Since(Reading before, Reading now, SiteClock clock)
    {
        if (now.Begin - before.End > LongestSilence)
        {
            return (double.NaN, null);
        }

        var fell = now.RainCounterMm < before.RainCounterMm - SameMm;
        if (now.RainCounterMm < 0 || (fell && now.RainCounterMm > MostAfterReset * before.RainCounterMm))
        {
            return (double.NaN, string.Create(CultureInfo.InvariantCulture, $"the running total was {before.RainCounterMm:0.##} mm before: it can only grow, or begin at 0 again"));
        }

        var mm = fell ? now.RainCounterMm : Math.Max(0, now.RainCounterMm - before.RainCounterMm);
        return now.Begin > before.End && mm > SameMm && clock.DateOf(before.End) != clock.DateOf(now.Begin)
            ? (double.NaN, string.Create(CultureInfo.InvariantCulture, $"{mm:0.##} mm fell while nothing was reported over midnight: which day has them is not known"))
            : (mm, null);
    }

    /// <summary>A silence of which the total tells that its rain, if any, is in the reading after it: its readings and what lies between them, all with 0.</summary>
    private static IEnumerable<Reading> Dry(DateTimeOffset begin, IEnumerable<Reading> silent, DateTimeOffset end, SiteClock clock)
    {
        foreach (var reading in silent)
        {
            foreach (var between in Between(begin, reading.Begin, clock))
            {
                yield return between;
            }

            yield return reading with { RainMm = 0 };
            begin = reading.End;
        }

        foreach (var between in Between(begin, end, clock))
        {
            yield return between;
        }
    }

    private static IEnumerable<Reading> Between(DateTimeOffset begin, DateTimeOffset end, SiteClock clock)
    {
        while (begin < end)
        {
            var midnight = clock.DayEnd(clock.DateOf(begin));
            var until = midnight < end ? midnight : end;
            yield return new Reading { Begin = begin, End = until, RainMm = 0 };
            begin = until;
        }
    }

    private static string Text(Reading reading) =>
        string.Create(CultureInfo.InvariantCulture, $"{QuantityName.Of(WeatherQuantity.Rain)} total {reading.RainCounterMm:0.##} mm");
}
