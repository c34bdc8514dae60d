using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>
/// What a working sensor near the ground cannot have measured: broken sensors, wrong units, marks of missing values that nobody
/// told of. Where the site overrules it, what the equations bear is still the limit.
/// </summary>
internal static class LimitsCheck
{
    /// <summary>Down to here a negative radiation is a cooling pyranometer at night and counts as 0, W/m². Common practice.</summary>
    private const double SolarLeastWPerM2 = -20;

    /// <summary>Above the solar constant (1367 W/m²) for the minutes in which clouds add their light. Common practice.</summary>
    public const double SolarMostWPerM2 = 1500;

    /// <summary>More than the sun, a mirror and a cloud's edge together: holds where the site overrules the limit, W/m². Common practice.</summary>
    private const double SolarBorneWPerM2 = 2500;

    /// <summary>Above Ra of a day: twilight and the zero of the sensor, MJ/m² per day. Common practice.</summary>
    private const double SolarDayMarginMJPerM2 = 1;

    /// <summary>Half of the last digit of tenths of an hour, h.</summary>
    private const double SunshineDigitH = 0.05;

    // A little beyond the records of the inhabited world. Common practice.
    private const double RainMostMmPerMin = 15;
    private const double RainMostMmPerHour = 305;
    private const double RainMostMmPerDay = 1825;

    public static WeatherCheck About { get; } = new(
        "limits",
        "a value that no working sensor near the ground shows in that climate and half of the year",
        "below 45° of latitude: air -40 to 50 °C and dew point -45 to 35 °C in winter, -30 to 60 and -30 to 40 in summer; from 45° on: -90 to 40 and -90 to 35 in winter, "
            + "-40 to 50 and -40 to 40 in summer (summer: April to September in the north); wind 0 to 75 m/s; radiation -20 to 1500 W/m², of a day at most Ra + 1 MJ/m²; "
            + "rain 0 to 15 mm a minute, 305 mm an hour, 1825 mm a day; sunshine within its interval; the station's own ET 0 to 20 mm a day, -0.5 to 2 mm an hour",
        WeatherCheck.IsSetAside + "; radiation from -20 to 0 W/m² counts as 0",
        "[WMO305] for temperatures, from memory; the rest common practice",
        [
            WeatherQuantity.AirTemperature, WeatherQuantity.AirTemperatureMax, WeatherQuantity.AirTemperatureMin, WeatherQuantity.DewPoint,
            WeatherQuantity.WindSpeed, WeatherQuantity.SolarRadiation, WeatherQuantity.Sunshine, WeatherQuantity.Rain, WeatherQuantity.ReferenceEt,
        ]);

    /// <summary>The reading without the values beyond their limits.</summary>
    public static Reading Keep(Reading reading, CheckNotes notes)
    {
        var kept = reading;
        foreach (var limit in notes.Climate.All)
        {
            var value = limit.Get(kept);
            if (IsOutside(About, kept, notes, limit, value))
            {
                kept = limit.With(kept, double.NaN);
            }
        }

        return KeepReferenceEt(KeepSunshine(KeepRain(KeepSolar(kept, notes), notes), notes), notes);
    }

    /// <summary>Beyond the limits, or where the site overrules them beyond what the equations bear; notes it.</summary>
    public static bool IsOutside(WeatherCheck check, Reading reading, CheckNotes notes, ValueLimit limit, double value)
    {
        if (!(value < limit.Least || value > limit.Most))
        {
            return false;
        }

        if (notes.IsAside(check, reading, limit.Quantity, value, limit.Unit, Outside(limit.Least, limit.Most, limit.Unit)))
        {
            return true;
        }

        if (!(value < limit.BorneLeast || value > limit.BorneMost))
        {
            return false;
        }

        notes.Note(check, reading, limit.Quantity, value, limit.Unit, Outside(limit.BorneLeast, limit.BorneMost, limit.Unit) + ", and no equation bears it", 1);
        return true;
    }

    private static string Outside(double least, double most, string unit) =>
        string.Create(CultureInfo.InvariantCulture, $"outside {least:0.##} to {most:0.##} {unit}");

    private static Reading KeepSolar(Reading r, CheckNotes notes)
    {
        if (double.IsNaN(r.SolarRadiationMJPerM2))
        {
            return r;
        }

        var power = r.SolarRadiationMJPerM2 * 1e6 / (r.End - r.Begin).TotalSeconds;
        var isDay = r.End - r.Begin > TimeSpan.FromHours(1);
        string? why = null;
        if (isDay && r.SolarRadiationMJPerM2 > notes.Sun.ExtraterrestrialMJPerM2 + SolarDayMarginMJPerM2)
        {
            why = "more than the sun sends to the top of the atmosphere on that date";
        }
        else if (!isDay && power > SolarMostWPerM2)
        {
            why = string.Create(CultureInfo.InvariantCulture, $"more than {SolarMostWPerM2} W/m²");
        }
        else if (power < SolarLeastWPerM2)
        {
            why = string.Create(CultureInfo.InvariantCulture, $"less than {SolarLeastWPerM2} W/m²");
        }

        var (value, unit) = isDay ? (r.SolarRadiationMJPerM2, "MJ/m²") : (power, "W/m²");
        if (why is not null && notes.IsAside(About, r, WeatherQuantity.SolarRadiation, value, unit, why))
        {
            return r with { SolarRadiationMJPerM2 = double.NaN };
        }

        if (power < SolarLeastWPerM2 || power > SolarBorneWPerM2)
        {
            notes.Note(About, r, WeatherQuantity.SolarRadiation, value, unit, why! + ", and no equation bears it", 1);
            return r with { SolarRadiationMJPerM2 = double.NaN };
        }

        return power < 0 ? r with { SolarRadiationMJPerM2 = 0 } : r;
    }

    private static Reading KeepRain(Reading r, CheckNotes notes)
    {
        var hours = (r.End - r.Begin).TotalHours;
        var most = hours > 1 ? RainMostMmPerDay : Math.Min(RainMostMmPerHour, RainMostMmPerMin * hours * 60);
        if (!(r.RainMm < 0 || r.RainMm > most))
        {
            return r;
        }

        // Less than none cannot be overruled.
        var why = string.Create(CultureInfo.InvariantCulture, $"outside 0 to {most:0.#} mm in {hours * 60:0} minutes");
        if (notes.IsAside(About, r, WeatherQuantity.Rain, r.RainMm, "mm", why))
        {
            if (r.RainMm > 0)
            {
                // Something fell, or was spilled: however much of the day is known, its rain is not.
                notes.RainNotKnown(r);
            }

            return r with { RainMm = double.NaN };
        }

        if (r.RainMm >= 0)
        {
            return r;
        }

        notes.Note(About, r, WeatherQuantity.Rain, r.RainMm, "mm", why, 1);
        return r with { RainMm = double.NaN };
    }

    /// <summary>Rain of a day's intervals that adds up to more than any day's: none of it counts.</summary>
    public static void KeepRainOfDay(CheckedRows rows)
    {
        var (from, to) = rows.OfDay();
        var sum = Enumerable.Range(from, to - from).Sum(row => double.IsNaN(rows[row].RainMm) ? 0 : rows[row].RainMm);
        if (sum <= RainMostMmPerDay || rows.Notes.Source.Accepts(About, WeatherQuantity.Rain))
        {
            return;
        }

        for (var row = from; row < to; row++)
        {
            rows.Notes.RainNotKnown(rows[row]);
        }

        rows.SetAside(About, WeatherQuantity.Rain, from, to, "mm", string.Create(CultureInfo.InvariantCulture, $"the day would add up to {sum:0} mm; is it a running total?"));
    }

    private static Reading KeepSunshine(Reading r, CheckNotes notes)
    {
        // A sunshine recorder's hour may be a minute long.
        var limit = new ValueLimit(
            WeatherQuantity.Sunshine, "h", 0, Math.Min(24, ((r.End - r.Begin).TotalHours * 1.02) + SunshineDigitH), 0, 24, r => r.SunshineH, (r, v) => r with { SunshineH = v });
        return !double.IsNaN(r.SunshineH) && IsOutside(About, r, notes, limit, r.SunshineH) ? limit.With(r, double.NaN) : r;
    }

    private static Reading KeepReferenceEt(Reading r, CheckNotes notes)
    {
        if (double.IsNaN(r.ReferenceEtMm))
        {
            return r;
        }

        var hours = (r.End - r.Begin).TotalHours;
        var limit = new ValueLimit(
            WeatherQuantity.ReferenceEt, "mm", hours > 1 ? 0 : -0.5 * hours, hours > 1 ? 20 : 2 * hours, -1, 40, r => r.ReferenceEtMm, (r, v) => r with { ReferenceEtMm = v });
        return IsOutside(About, r, notes, limit, r.ReferenceEtMm) ? limit.With(r, double.NaN) : r;
    }
}
