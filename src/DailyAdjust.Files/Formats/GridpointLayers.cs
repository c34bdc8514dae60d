using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Formats;

/// <summary>The layers of a gridpoint forecast that are read, and how their values become hours.</summary>
internal static class GridpointLayers
{
    /// <summary>Layer to quantity, in the order in which hints name them.</summary>
    public static IReadOnlyDictionary<string, WeatherQuantity> ByName { get; } = new OrderedDictionary<string, WeatherQuantity>(StringComparer.Ordinal)
    {
        ["temperature"] = WeatherQuantity.AirTemperature,
        ["maxTemperature"] = WeatherQuantity.AirTemperatureMax,
        ["minTemperature"] = WeatherQuantity.AirTemperatureMin,
        ["dewpoint"] = WeatherQuantity.DewPoint,
        ["relativeHumidity"] = WeatherQuantity.RelativeHumidity,
        ["windSpeed"] = WeatherQuantity.WindSpeed,
        ["probabilityOfPrecipitation"] = WeatherQuantity.RainChance,
        ["quantitativePrecipitation"] = WeatherQuantity.Rain,
    };

    /// <summary>Puts every value of a layer into its hours; each is counted once.</summary>
    public static void Read(GridpointLayer layer, TextPlaces places, ForecastHours hours, FormatRows rows)
    {
        var quantity = ByName[layer.Name];
        var unit = UnitOf(layer, quantity);
        if (unit is null)
        {
            var (line, column) = places.Of(layer.Offset);
            var what = layer.Unit is null ? "has no unit" : $"has the unit {Wording.Quote(layer.Unit)}, which is not known";
            rows.Tell("layer", line, column, $"the layer {layer.Name} {what}", "It is set aside; the other layers count");
        }

        foreach (var value in layer.Values)
        {
            if (unit is null)
            {
                rows.RowSetAside();
                continue;
            }

            Read(layer.Name, value, quantity, unit, places, hours, rows);
        }
    }

    private static void Read(string layer, LayerValue value, WeatherQuantity quantity, Unit unit, TextPlaces places, ForecastHours hours, FormatRows rows)
    {
        if (value.ValidTime is null || ForecastInterval.Read(value.ValidTime) is not { } interval)
        {
            var (line, column) = places.Of(value.Offset);
            var found = value.ValidTime is null ? "has no validTime" : $"has the validTime {Wording.Quote(value.ValidTime)}";
            rows.Refuse("validTime", line, column, $"a value of {layer} {found}", "A time and a duration of whole hours are needed: 2026-06-08T06:00:00+00:00/PT3H");
            return;
        }

        if (!hours.Reaches(interval))
        {
            var (line, column) = places.Of(value.Offset);
            rows.Refuse("far away", line, column, $"a value of {layer} for {Wording.Quote(value.ValidTime)} lies far from the others", "A forecast tells of days, not of months");
            return;
        }

        if (value.NoNumber is { } noNumber)
        {
            var (line, column) = places.Of(value.Offset);
            rows.Tell("no number", line, column, $"a value of {layer} is {Wording.Quote(noNumber)}, not a number", "It counts as missing");
            rows.RowSetAside();
            return;
        }

        rows.Row();
        if (!double.IsNaN(value.Value))
        {
            hours.Put(interval, quantity, unit.ToMetric(value.Value), rows.Clock);
        }
    }

    /// <summary>"wmoUnit:km_h-1" is km/h.</summary>
    private static Unit? UnitOf(GridpointLayer layer, WeatherQuantity quantity) =>
        layer.Unit is { } spelled ? Units.Find(spelled[(spelled.IndexOf(':', StringComparison.Ordinal) + 1)..], WeatherUnits.Kinds(quantity, daily: false)[0]) : null;
}
