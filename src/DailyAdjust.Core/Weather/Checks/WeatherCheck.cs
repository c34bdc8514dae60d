using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>One check of what weather stations say, as docs/weather-checks.md lists it.</summary>
/// <param name="Name">As site.yaml's `accept` writes it.</param>
/// <param name="What">What it looks for.</param>
/// <param name="Limit">Its limits in words.</param>
/// <param name="Happens">What happens to the values that it finds.</param>
/// <param name="Source">Where the limit is from.</param>
/// <param name="Quantities">What it judges: `accept` may name one of them beside the check.</param>
public sealed record WeatherCheck(
    string Name, string What, string Limit, string Happens, string Source, IReadOnlyList<WeatherQuantity> Quantities)
{
    /// <summary>What happens to values that a sensor cannot have measured.</summary>
    internal const string IsSetAside = "set aside";

    /// <summary>What happens where a sensor is doubtful but no single value is wrong.</summary>
    internal const string IsTold = "told on the sheet; the values count";
}
