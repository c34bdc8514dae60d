using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>Every check of weather, in the order in which they are made.</summary>
public static class WeatherChecks
{
    public static IReadOnlyList<WeatherCheck> All { get; } =
    [
        LimitsCheck.About,
        HumidityCheck.About,
        OrderCheck.About,
        DewPointCheck.About,
        NightSunCheck.About,
        ClearSkyCheck.About,
        SpikeCheck.About,
        StuckCheck.About,
        StillWindCheck.About,
        RainSpikeCheck.About,
        RainTotalCheck.About,
        SecondStationCheck.About,
        DawnHumidityCheck.About,
        LowRadiationCheck.About,
        HighRadiationCheck.About,
        ClockCheck.About,
    ];

    /// <summary>Why a text cannot stand in a station's `accept`, and what could; null = it can.</summary>
    /// <param name="text">A check's name, or that and a quantity ("stuck wind_speed").</param>
    public static (string What, string Hint)? FaultOf(string text)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var name = words.Length == 0 ? "" : words[0];
        if (All.FirstOrDefault(c => string.Equals(c.Name, name, StringComparison.Ordinal)) is not { } check)
        {
            return ($"\"{text}\" is not a check of weather", "the checks: " + string.Join(", ", All.Select(c => c.Name)));
        }

        return words.Length == 1 || (words.Length == 2 && check.Quantities.Any(q => string.Equals(QuantityName.Of(q), words[1], StringComparison.Ordinal)))
            ? null
            : ($"\"{text}\": {name} does not judge that", $"write {name}, or {name} and one of: {string.Join(", ", check.Quantities.Select(QuantityName.Of))}");
    }

    /// <summary>Whether the site overrules a check for a quantity of a station.</summary>
    internal static bool Accepts(this WeatherSource source, WeatherCheck check, WeatherQuantity quantity) =>
        source.Accept.Count > 0 && source.Accept.Any(text =>
        {
            var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            return words.Length > 0 && string.Equals(words[0], check.Name, StringComparison.Ordinal)
                && (words.Length == 1 || string.Equals(words[1], QuantityName.Of(quantity), StringComparison.Ordinal));
        });
}
