using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Formats;

/// <summary>What is read of an element of GHCN-Daily.</summary>
/// <param name="Quantity">What it measures.</param>
/// <param name="PerUnit">The file's units in one of the reading's.</param>
/// <param name="Kind">What its number is.</param>
internal sealed record GhcnElement(WeatherQuantity Quantity, double PerUnit, GhcnNumber Kind = GhcnNumber.OfTheDay)
{
    /// <summary>
    /// Units from the publisher's notes; those of humidity (%), dew point (0.1 °C) and sunshine (minutes), and the elements of several days
    /// but MDPR and DAPR, from memory. The run of wind over an evaporation pan (WDMV) is left out: the height of its anemometer is not known.
    /// </summary>
    private static readonly Dictionary<string, GhcnElement> Read = new(StringComparer.Ordinal)
    {
        ["PRCP"] = new(WeatherQuantity.Rain, 10),
        ["TMAX"] = new(WeatherQuantity.AirTemperatureMax, 10),
        ["TMIN"] = new(WeatherQuantity.AirTemperatureMin, 10),
        ["TAVG"] = new(WeatherQuantity.AirTemperature, 10),
        ["ADPT"] = new(WeatherQuantity.DewPoint, 10),
        ["RHAV"] = new(WeatherQuantity.RelativeHumidity, 1),
        ["RHMX"] = new(WeatherQuantity.RelativeHumidityMax, 1),
        ["RHMN"] = new(WeatherQuantity.RelativeHumidityMin, 1),
        ["AWND"] = new(WeatherQuantity.WindSpeed, 10),
        ["TSUN"] = new(WeatherQuantity.Sunshine, 60),
        ["MDPR"] = new(WeatherQuantity.Rain, 10, GhcnNumber.OfSeveralDays),
        ["MDTX"] = new(WeatherQuantity.AirTemperatureMax, 10, GhcnNumber.OfSeveralDays),
        ["MDTN"] = new(WeatherQuantity.AirTemperatureMin, 10, GhcnNumber.OfSeveralDays),
        ["DAPR"] = new(WeatherQuantity.Rain, 1, GhcnNumber.CountOfDays),
        ["DATX"] = new(WeatherQuantity.AirTemperatureMax, 1, GhcnNumber.CountOfDays),
        ["DATN"] = new(WeatherQuantity.AirTemperatureMin, 1, GhcnNumber.CountOfDays),
    };

    public static IReadOnlyList<WeatherQuantity> Quantities { get; } = [.. Read.Values.Select(element => element.Quantity).Distinct().Order()];

    /// <summary>The names of the elements that are read, as a header of the access CSV may have them.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. Read.Keys.Order(StringComparer.Ordinal)];

    /// <summary>Null = the element is none that is read.</summary>
    public static GhcnElement? Find(ReadOnlySpan<char> name) =>
        Read.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(name, out var element) ? element : null;

    /// <summary>A capital and three capitals or digits.</summary>
    public static bool IsName(ReadOnlySpan<char> name) =>
        name.Length == 4 && char.IsAsciiLetterUpper(name[0]) && IsCapitalsAndDigits(name);

    /// <summary>Two letters of the country, one of the network, eight more.</summary>
    public static bool IsStation(ReadOnlySpan<char> code) =>
        code.Length == 11 && char.IsAsciiLetterUpper(code[0]) && char.IsAsciiLetterUpper(code[1]) && IsCapitalsAndDigits(code);

    private static bool IsCapitalsAndDigits(ReadOnlySpan<char> text)
    {
        foreach (var c in text)
        {
            if (!char.IsAsciiLetterUpper(c) && !char.IsAsciiDigit(c))
            {
                return false;
            }
        }

        return true;
    }
}

internal enum GhcnNumber
{
    OfTheDay,

    /// <summary>A total, or an extreme, of several days, at the last of them.</summary>
    OfSeveralDays,

    /// <summary>How many days the one above stands for.</summary>
    CountOfDays,
}
