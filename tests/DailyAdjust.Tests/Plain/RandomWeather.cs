using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Tests.Plain;

/// <summary>Invented weather days: ETo on its grid, rain by the interval, by the day, or unknown.</summary>
internal static class RandomWeather
{
    public static WeatherDay Day(Dice dice, Site site, DateOnly date)
    {
        var eto = dice.Chance(0.05) ? 0 : dice.Between(0.3, 8, 6);
        return new WeatherDay
        {
            Date = date,
            Station = "a",
            EtoMm = eto,
            Basis = dice.Chance(0.1) ? EtoBasis.Expected : dice.OneOf(EtoBasis.Hourly, EtoBasis.Daily, EtoBasis.TemperatureOnly),
            Rain = [Hourly(dice, site, date, eto), Daily(dice, site, date, eto)],
        };
    }

    private static GaugeDay Hourly(Dice dice, Site site, DateOnly date, double eto)
    {
        if (dice.Chance(0.06))
        {
            return new("hourly", null, [], RainBasis.Unknown, 1.2);
        }

        if (dice.Chance(0.6))
        {
            return new("hourly", 0, [], RainBasis.Measured, 0);
        }

        var interval = TimeSpan.FromMinutes(dice.OneOf(60, 60, 15));
        var begin = site.Clock.DayStart(date);
        var intervals = (int)((site.Clock.DayEnd(date) - begin) / interval);
        var falls = Enumerable.Range(1, intervals)
            .Where(_ => dice.Chance(0.12))
            .Select(i => new RainFall(begin + (i * interval), dice.Chance(0.5) ? dice.Between(0.2, 12, 1) : Math.Max(0.1, Math.Round(eto * 0.05, 1))))
            .ToList();
        return new("hourly", falls.Sum(f => f.Mm), falls, RainBasis.Measured, 0);
    }

    private static GaugeDay Daily(Dice dice, Site site, DateOnly date, double eto)
    {
        if (dice.Chance(0.06))
        {
            return new("daily", null, [], RainBasis.Unknown, 0);
        }

        var mm = dice.Chance(0.65) ? 0 : dice.OneOf(dice.Between(0.2, 45, 1), Math.Round(eto * 0.2, 1));
        return new("daily", mm, mm > 0 ? [new RainFall(site.Clock.DayStart(date), mm)] : [], RainBasis.Logbook, 0);
    }
}
