using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Core.Weather.Checks;

namespace DailyAdjust.Core.Morning;

/// <summary>What the checks of weather have to say on the sheet, in plain sentences, and where a station stands that helped out.</summary>
internal static class SensorPart
{
    private const int Most = 6;
    private const double MetresPerMile = 1609.344;

    /// <summary>Values that were not used, by station, quantity and check, newest first.</summary>
    /// <param name="found">By date.</param>
    /// <param name="units">The site's.</param>
    public static IReadOnlyList<Phrase> SetAside(IReadOnlyList<(DateOnly Date, SetAsideValue Value)> found, UnitSystem units)
    {
        var groups = found
            .GroupBy(f => (f.Value.Station, f.Value.Quantity, f.Value.Check))
            .OrderByDescending(g => g.Max(f => f.Date))
            .ThenBy(g => g.Key.Station, StringComparer.Ordinal)
            .ThenBy(g => g.Key.Quantity, StringComparer.Ordinal)
            .ThenBy(g => g.Key.Check, StringComparer.Ordinal)
            .Select(g => Sentence(g.Key, [.. g], units))
            .ToList();
        return groups.Count <= Most ? groups : [.. groups.Take(Most - 1), $"{groups.Count - Most + 1} more kinds of values were set aside; the weather table and explain name them."];
    }

    /// <summary>Sensors doubted on the newest day.</summary>
    public static IReadOnlyList<Phrase> Doubts(IReadOnlyList<WeatherDay> recent, UnitSystem units) => recent.Count == 0
        ? []
        : [.. recent[^1].Doubts.Take(Most).Select(d => Phrase.Of($"Station {d.Station}: {RecordedWords.Of(RecordedUnits.Sentence(units, d.Words))} (check for {CheckWords.Of(d.Check)})."))];

    /// <summary>" (12 mi away, 250 ft higher)"; empty where the description does not say where it stands.</summary>
    public static Phrase Place(StandIn? standIn, UnitSystem units)
    {
        List<Phrase> said = [];
        if (standIn?.DistanceM is { } distance)
        {
            var (far, unit) = units == UnitSystem.Us ? (distance / MetresPerMile, "mi") : (distance / 1000, "km");
            said.Add($"{(far < 10 ? Math.Round(far, 1) : Math.Round(far))} {unit} away");
        }

        if (standIn?.HigherM is { } higher)
        {
            var (height, unit) = units == UnitSystem.Us ? (higher / (Depth.MmPerInch * 12 / 1000), "ft") : (higher, "m");
            said.Add(Math.Round(height) == 0 ? new Phrase("as high as the site")
                : height > 0 ? Phrase.Of($"{Math.Abs(Math.Round(height))} {unit} higher")
                : $"{Math.Abs(Math.Round(height))} {unit} lower");
        }

        return said.Count == 0 ? Phrase.Empty : $" ({Phrase.Join(", ", said)})";
    }

    private static Phrase Sentence((string Station, string Quantity, string Check) key, List<(DateOnly Date, SetAsideValue Value)> found, UnitSystem units)
    {
        var (newest, count) = (found[^1].Value, found.Sum(f => f.Value.Values));
        var quantity = RecordedWords.Quantity(key.Quantity);
        var days = found[0].Date == found[^1].Date ? Phrase.Of($"on {Words.Date(found[0].Date)}") : $"from {Words.Date(found[0].Date)} to {Words.Date(found[^1].Date)}";
        var check = key.Check.Length == 0 ? Phrase.Empty : $" by the check for {CheckWords.Of(key.Check)}";
        var example = newest.What.Length > key.Quantity.Length ? RecordedUnits.Value(units, newest.What[(key.Quantity.Length + 1)..]) + ", " : "";
        return $"Station {key.Station}: {Phrase.Count(count, "value", "values")} of {quantity} set aside{check} {days} ({(count == 1 ? Phrase.Empty : new Phrase("the last "))}{example}{RecordedWords.Of(RecordedUnits.Sentence(units, newest.Why))}).";
    }
}
