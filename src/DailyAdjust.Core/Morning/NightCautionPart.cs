using System.Globalization;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>A night that is too cold or too windy to water.</summary>
/// <param name="Reason">Cold or wind.</param>
/// <param name="Value">The lowest air temperature, °C, or the highest wind, m/s.</param>
/// <param name="Limit">The site's, in the same unit.</param>
/// <param name="IsForecast">Of the night to come; otherwise of last night, for want of a forecast.</param>
/// <param name="Holds">The site holds its starts for it.</param>
public sealed record NightCaution(OffReason Reason, double Value, double Limit, bool IsForecast, bool Holds)
{
    /// <summary>"below 40 °F", "above 10 mph"; "just below 40 °F" where value and limit read the same.</summary>
    /// <param name="written">Either of them with its unit.</param>
    public Phrase BesideLimit(Func<double, string> written)
    {
        ArgumentNullException.ThrowIfNull(written);
        var limit = written(Limit);
        var isJust = string.Equals(written(Value), limit, StringComparison.Ordinal);
        return (Reason, isJust) switch
        {
            (OffReason.Cold, true) => $"just below {limit}",
            (OffReason.Cold, false) => $"below {limit}",
            (_, true) => $"just above {limit}",
            _ => $"above {limit}",
        };
    }
}

/// <summary>Cold and wind of the night: forecast, else as they were last night.</summary>
internal static class NightCautionPart
{
    public static IReadOnlyList<NightCaution> Of(MorningInputs inputs, Site site)
    {
        var night = inputs.Forecast.FirstOrDefault(day => day.Date == inputs.Date)?.Night;
        var cautions = new List<NightCaution>();
        var limits = site.Cautions;
        if ((night?.LowestTemperatureC ?? OvernightPart.Coldest(inputs, site)?.AirTemperatureC) is { } lowest && lowest < limits.ColdBelowC)
        {
            cautions.Add(new(OffReason.Cold, lowest, limits.ColdBelowC, night?.LowestTemperatureC is not null, limits.ColdHolds));
        }

        if ((night?.HighestWindMPerS ?? LastNightsWind(inputs, site)) is { } wind && wind > limits.WindAboveMPerS)
        {
            cautions.Add(new(OffReason.Wind, wind, limits.WindAboveMPerS, night?.HighestWindMPerS is not null, limits.WindHolds));
        }

        return cautions;
    }

    /// <summary>Orders for tonight's starts, where the site holds for it: from today's round to tomorrow's.</summary>
    public static IReadOnlyList<OffOrder> Orders(MorningInputs inputs, Site site)
    {
        var round = site.Report.RoundDoneBy;
        return [.. Of(inputs, site).Where(c => c.Holds).Select(c => new OffOrder(
            c.Reason,
            new Place(PlaceKind.Site, "", ""),
            site.Clock.ToInstant(inputs.Date, round),
            site.Clock.ToInstant(inputs.Date.AddDays(1), round),
            new LogTime(inputs.Date.AddDays(1), round),
            Clause(c, site.Units),
            ""))];
    }

    /// <summary>"34 °F forecast for tonight, below 40 °F", "36 °F last night, below 40 °F; no forecast for tonight".</summary>
    public static Phrase Clause(NightCaution caution, UnitSystem units)
    {
        string Written(double value) => caution.Reason == OffReason.Cold ? Temperature(value, units) : Speed(value, units);
        return caution.IsForecast
            ? Phrase.Of($"{Written(caution.Value)} forecast for tonight, {caution.BesideLimit(Written)}")
            : $"{Written(caution.Value)} last night, {caution.BesideLimit(Written)}; no forecast for tonight";
    }

    private static double? LastNightsWind(MorningInputs inputs, Site site)
    {
        List<double> known = [.. OvernightPart.Measured(inputs, site).Select(r => r.WindSpeedMPerS).Where(w => !double.IsNaN(w))];
        return known.Count > 0 ? known.Max() : null;
    }

    private static string Temperature(double celsius, UnitSystem units) => units == UnitSystem.Us
        ? ((celsius * 1.8) + 32).ToString("0", CultureInfo.InvariantCulture) + " °F"
        : celsius.ToString("0.0", CultureInfo.InvariantCulture) + " °C";

    private static string Speed(double mPerS, UnitSystem units) => units == UnitSystem.Us
        ? (mPerS / Units.MPerSPerMph).ToString("0", CultureInfo.InvariantCulture) + " mph"
        : mPerS.ToString("0.0", CultureInfo.InvariantCulture) + " m/s";
}
