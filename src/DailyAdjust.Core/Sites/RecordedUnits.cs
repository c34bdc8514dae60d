using System.Globalization;
using System.Text.RegularExpressions;
using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Core.Sites;

/// <summary>Figures that a record holds in metric units, in those of the site: "taken as 2 m/s" reads "taken as 4 mph" there.</summary>
public static partial class RecordedUnits
{
    private const double FPerC = 1.8;

    /// <summary>A sentence; degrees stay, because some are differences.</summary>
    public static string Sentence(UnitSystem units, string words) => units == UnitSystem.Us ? Lengths().Replace(words, Converted) : words;

    /// <summary>A value with its unit.</summary>
    public static string Value(UnitSystem units, string words) => units == UnitSystem.Us ? Degrees().Replace(Lengths().Replace(words, Converted), Converted) : words;

    private static string Converted(Match match)
    {
        var value = double.Parse(match.Groups["value"].ValueSpan, CultureInfo.InvariantCulture);
        return match.Groups["unit"].Value switch
        {
            "mm" => string.Create(CultureInfo.InvariantCulture, $"{value / Depth.MmPerInch:0.00} in"),
            "m/s" => string.Create(CultureInfo.InvariantCulture, $"{value / Units.MPerSPerMph:0} mph"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{(value * FPerC) + 32:0} °F"),
        };
    }

    [GeneratedRegex("(?<value>-?[0-9]+(\\.[0-9]+)?) (?<unit>mm|m/s)(?![A-Za-z0-9/²])", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Lengths();

    [GeneratedRegex("(?<value>-?[0-9]+(\\.[0-9]+)?) (?<unit>°C)", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Degrees();
}
