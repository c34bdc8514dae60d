using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Guess;

/// <summary>A unit for a column whose header does not say it, from the size of its values. Never sure.</summary>
internal static class UnitFromValues
{
    /// <summary>No thermometer in the shade has shown more, °C. From memory.</summary>
    private const double HottestC = 56.7;

    private const double MostF = 170;

    /// <summary>Air that would be too hot in °C and too cold in K.</summary>
    public static bool IsFahrenheit(IReadOnlyList<double> values) => values.Count > 0 && values.Max() is > HottestC and <= MostF;

    /// <param name="values">The column's numbers without those that mean missing.</param>
    /// <param name="us">The other columns of the file are in US units.</param>
    public static ColumnUnit? Of(WeatherQuantity quantity, IReadOnlyList<double> values, bool daily, bool us)
    {
        if (values.Count == 0)
        {
            return null;
        }

        var most = values.Max();
        var (spelling, why) = quantity switch
        {
            WeatherQuantity.AirTemperature or WeatherQuantity.AirTemperatureMax or WeatherQuantity.AirTemperatureMin or WeatherQuantity.DewPoint =>
                most > MostF ? ("K", Up("only K goes so far", most)) : most > HottestC ? ("°F", Up("more than any °C in the shade", most)) : (us ? "°F" : "°C", Up(us ? "others are in US units" : "°C or °F", most)),
            WeatherQuantity.RelativeHumidity or WeatherQuantity.RelativeHumidityMax or WeatherQuantity.RelativeHumidityMin =>
                most <= 1 ? ("fraction", Up("a share of 1", most)) : ("%", Up("as percent are", most)),
            WeatherQuantity.WindSpeed => (us ? "mph" : "m/s", Up(us ? "others are in US units; m/s, km/h or mph" : "m/s, km/h or mph", most)),
            WeatherQuantity.SolarRadiation => OfRadiation(most, daily),
            WeatherQuantity.Sunshine => most > 24 || (!daily && most > 1) ? ("min", Up("minutes", most)) : ("h", Up("hours", most)),
            WeatherQuantity.Rain or WeatherQuantity.ReferenceEt => (us ? "in" : "mm", Up(us ? "others are in US units; in or mm" : "mm or in", most)),
            _ => ("%", ""),
        };
        return WeatherUnits.Find(spelling, quantity, daily) is { } unit
            ? new(unit, InMap: true, IsSure: false, $"the unit stands nowhere in the file; {why}")
            : null;
    }

    /// <summary>A clear noon is about 1000 W/m², 3.6 MJ/m² or 86 langleys in an hour; a clear summer day about 30 MJ/m².</summary>
    private static (string, string) OfRadiation(double most, bool daily) => daily
        ? most <= 45 ? ("MJ/m²", Up("as a day's MJ/m² are", most)) : ("W/m²", Up("W/m² or langleys", most))
        : most <= 5 ? ("MJ/m²", Up("as MJ/m² of an hour are", most)) : ("W/m²", Up("W/m², J/cm² or langleys", most));

    private static string Up(string what, double most) => string.Create(CultureInfo.InvariantCulture, $"values go up to {most:0.##}: {what}");
}
