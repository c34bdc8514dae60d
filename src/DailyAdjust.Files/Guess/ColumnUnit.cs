using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Guess;

/// <summary>The unit of a column, and where it stands.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="InMap">The reader finds it neither in the header nor below it: the column map has to say it.</param>
/// <param name="IsSure">It is written in the file.</param>
/// <param name="Why">Where it was found, or what it was guessed from.</param>
internal sealed record ColumnUnit(Unit Unit, bool InMap, bool IsSure, string Why)
{
    private const string Signs = " _,;:-./|";

    /// <summary>No unit is spelled longer, characters.</summary>
    private const int LongestUnit = 60;

    /// <summary>What headers write where signs such as / and ² have no place.</summary>
    private static readonly Dictionary<string, string> Worn = new(StringComparer.OrdinalIgnoreCase)
    {
        ["w"] = "W/m²",
        ["wm2"] = "W/m²",
        ["wattm2"] = "W/m²",
        ["watts"] = "W/m²",
        ["kwm2"] = "kW/m²",
        ["mjm2"] = "MJ/m²",
        ["mj"] = "MJ/m²",
        ["kjm2"] = "kJ/m²",
        ["jcm2"] = "J/cm²",
        ["whm2"] = "Wh/m²",
        ["ms"] = "m/s",
        ["meterssecond"] = "m/s",
        ["metressecond"] = "m/s",
        ["milesperhour"] = "mph",
        ["mileshour"] = "mph",
        ["km h"] = "km/h",
        ["fts"] = "ft/s",
        ["pc"] = "%",
        ["prc"] = "%",
    };

    /// <summary>The unit that the file writes; null = none that the quantity can have.</summary>
    /// <param name="header">As the file spells it.</param>
    /// <param name="below">What stands in the line of units; null = there is no such line.</param>
    public static ColumnUnit? Written(string header, string? below, WeatherQuantity quantity, bool daily)
    {
        if (HeaderUnit.Split(header).Unit is { } closing && Find(Clean(closing), quantity, daily) is { } inHeader)
        {
            return new(inHeader, InMap: false, IsSure: true, $"the header says {inHeader.Symbol}");
        }

        if (new HeaderWords(header).InBrackets is { } inside && (Find(Clean(inside), quantity, daily) ?? FindWorn(Clean(inside), quantity, daily)) is { } bracketed)
        {
            return new(bracketed, InMap: true, IsSure: true, $"the header says {bracketed.Symbol}");
        }

        if (below?.Trim().Trim('[', ']', '(', ')') is { Length: > 0 } line && HeaderUnit.Split(header).Unit is null)
        {
            if (Find(line, quantity, daily) is { } belowUnit)
            {
                return new(belowUnit, InMap: false, IsSure: true, $"the line below the header says {belowUnit.Symbol}");
            }

            if (FindWorn(Clean(line), quantity, daily) is { } wornUnit)
            {
                return new(wornUnit, InMap: true, IsSure: true, $"the line below the header says {wornUnit.Symbol}");
            }
        }

        return AfterName(header, quantity, daily) is { } unit ? new(unit, InMap: true, IsSure: true, $"the header ends in {unit.Symbol}") : null;
    }

    /// <summary>Whether a cell is a unit of any quantity.</summary>
    public static bool IsUnit(string cell) =>
        cell.Trim().Trim('[', ']', '(', ')') is { Length: > 0 and <= 24 } text
        && Enum.GetValues<WeatherQuantity>().Any(quantity => (Find(text, quantity, daily: true) ?? FindWorn(Clean(text), quantity, daily: true)) is not null);

    /// <summary>The longest end of the header that is a unit: "Temp_F", "RH %", "Wind Speed, mph", "rainin".</summary>
    private static Unit? AfterName(string header, WeatherQuantity quantity, bool daily)
    {
        var text = header.Trim();
        for (var i = Math.Max(1, text.Length - LongestUnit); i < text.Length; i++)
        {
            // After a sign, where small letters turn into a capital, or where letters end and a sign such as ° or % begins.
            var begins = Signs.Contains(text[i - 1], StringComparison.Ordinal)
                || (char.IsLower(text[i - 1]) && char.IsUpper(text[i]))
                || (char.IsLetter(text[i - 1]) && text[i] is '°' or 'º' or '%');
            var tail = begins ? Clean(text[i..].TrimStart(Signs.ToCharArray())) : "";
            if (tail.Length > 0 && (Find(tail, quantity, daily) ?? FindWorn(tail, quantity, daily)) is { } unit)
            {
                return unit;
            }
        }

        return GrownTogether(text, quantity, daily);
    }

    /// <summary>"tempf", "windspeedmph", "rainin": only after a word that means the quantity.</summary>
    private static Unit? GrownTogether(string text, WeatherQuantity quantity, bool daily)
    {
        foreach (var word in new[] { "temp", "temperature", "windspeed", "wind", "rain", "rainfall", "precip", "dewpoint", "dewpt", "solarradiation", "solar", "airt" })
        {
            var at = text.LastIndexOf(word, StringComparison.OrdinalIgnoreCase);
            if (at >= 0 && Find(text[(at + word.Length)..], quantity, daily) is { } unit)
            {
                return unit;
            }
        }

        return null;
    }

    private static Unit? Find(string spelling, WeatherQuantity quantity, bool daily) => WeatherUnits.Find(spelling, quantity, daily);

    private static Unit? FindWorn(string spelling, WeatherQuantity quantity, bool daily) =>
        Worn.TryGetValue(spelling.Replace("_", "", StringComparison.Ordinal).Replace("/", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal), out var plain)
            ? WeatherUnits.Find(plain, quantity, daily)
            : null;

    /// <summary>Without the words of how it was taken: "C Avg" is °C.</summary>
    private static string Clean(string unit)
    {
        var clean = unit.Replace("\uFFFD", "", StringComparison.Ordinal).Trim();
        foreach (var word in new[] { "avg", "average", "mean", "max", "min", "tot", "total", "sum" })
        {
            if (clean.EndsWith(word, StringComparison.OrdinalIgnoreCase) && clean.Length > word.Length && Signs.Contains(clean[^(word.Length + 1)], StringComparison.Ordinal))
            {
                return clean[..^(word.Length + 1)].TrimEnd(Signs.ToCharArray());
            }
        }

        return clean;
    }
}
