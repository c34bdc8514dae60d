using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Files.Formats;

/// <summary>One row's values, each in the interval that it belongs to: where a row's values were observed over different days, it makes several readings.</summary>
internal sealed class RowValues(SiteClock clock)
{
    private static readonly int QuantityCount = Enum.GetValues<WeatherQuantity>().Length;

    private readonly SortedDictionary<DateTimeOffset, Slot> _slots = [];

    /// <summary>Values of the row that are no number.</summary>
    public int SetAside { get; set; }

    /// <summary>A value of a day, with the window that it was observed over if that is not the site's own day.</summary>
    /// <param name="value">In the reading's unit.</param>
    public void Put(DayWindow day, WeatherQuantity quantity, double value)
    {
        SlotOf(day.Date).Values[(int)quantity] = value;
        if (day.Words is { } words)
        {
            Mark(day, quantity, MarkKind.OtherWindow, words);
        }
    }

    /// <summary>What the file says of a day's value; without a value it stays missing.</summary>
    public void Mark(DayWindow day, WeatherQuantity quantity, MarkKind kind, string raw) =>
        SlotOf(day.Date).Marks.Add(new ValueMark(quantity, kind, raw));

    /// <summary>A value of an interval shorter than a day.</summary>
    public void Put(DateTimeOffset begin, TimeSpan length, WeatherQuantity quantity, double value) =>
        SlotOf(begin, begin + length).Values[(int)quantity] = value;

    public void Mark(DateTimeOffset begin, TimeSpan length, WeatherQuantity quantity, MarkKind kind, string raw) =>
        SlotOf(begin, begin + length).Marks.Add(new ValueMark(quantity, kind, raw));

    /// <summary>One per interval of which anything is said, ascending.</summary>
    public IEnumerable<Reading> ToReadings() => _slots.Select(slot => ToReading(slot.Key, slot.Value));

    private static Reading ToReading(DateTimeOffset begin, Slot slot)
    {
        double Value(WeatherQuantity quantity) => slot.Values[(int)quantity];
        return new Reading
        {
            Begin = begin,
            End = slot.End,
            AirTemperatureC = Value(WeatherQuantity.AirTemperature),
            AirTemperatureMaxC = Value(WeatherQuantity.AirTemperatureMax),
            AirTemperatureMinC = Value(WeatherQuantity.AirTemperatureMin),
            RelativeHumidityPercent = Value(WeatherQuantity.RelativeHumidity),
            RelativeHumidityMaxPercent = Value(WeatherQuantity.RelativeHumidityMax),
            RelativeHumidityMinPercent = Value(WeatherQuantity.RelativeHumidityMin),
            DewPointC = Value(WeatherQuantity.DewPoint),
            WindSpeedMPerS = Value(WeatherQuantity.WindSpeed),
            SolarRadiationMJPerM2 = Value(WeatherQuantity.SolarRadiation),
            SunshineH = Value(WeatherQuantity.Sunshine),
            RainMm = Value(WeatherQuantity.Rain),
            ReferenceEtMm = Value(WeatherQuantity.ReferenceEt),
            RainChancePercent = Value(WeatherQuantity.RainChance),
            Marks = [.. slot.Marks.OrderBy(mark => mark.Quantity).ThenBy(mark => mark.Kind)],
        };
    }

    private Slot SlotOf(DateOnly date) => SlotOf(clock.DayStart(date), clock.DayEnd(date));

    private Slot SlotOf(DateTimeOffset begin, DateTimeOffset end)
    {
        if (!_slots.TryGetValue(begin, out var slot))
        {
            var values = new double[QuantityCount];
            Array.Fill(values, double.NaN);
            _slots.Add(begin, slot = new Slot(end, values, []));
        }

        return slot;
    }

    private sealed record Slot(DateTimeOffset End, double[] Values, List<ValueMark> Marks);
}
