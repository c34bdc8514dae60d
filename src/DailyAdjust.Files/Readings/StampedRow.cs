using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Files.Readings;

/// <summary>A row whose cells have been read and whose instant is still to be found.</summary>
internal sealed class StampedRow
{
    public static readonly int QuantityCount = Enum.GetValues<WeatherQuantity>().Length;

    private readonly double[] _values = new double[QuantityCount];
    private readonly QuantityUnit?[] _units = new QuantityUnit?[QuantityCount];

    /// <summary>From 1.</summary>
    public required int Line { get; init; }

    /// <summary>The cell that the time stands in, from 1.</summary>
    public required int TimeColumn { get; init; }

    /// <summary>As the row says it: UTC where the text carries an offset, else on the clock that wrote the file.</summary>
    public required DateTime Stamp { get; init; }

    /// <summary>Values of this row that are no number.</summary>
    public int SetAside { get; set; }

    /// <summary>Whether the row says anything at all: an interval of missing values is no reading.</summary>
    public bool HasValue { get; private set; }

    public void Put(double value, QuantityUnit unit)
    {
        _values[(int)unit.Quantity] = value;
        _units[(int)unit.Quantity] = unit;
        HasValue = true;
    }

    public Reading ToReading(DateTimeOffset begin, DateTimeOffset end)
    {
        double Value(WeatherQuantity quantity) => _units[(int)quantity] is { } unit ? unit.ToReading(_values[(int)quantity], end - begin) : double.NaN;
        var counter = _units[(int)WeatherQuantity.Rain] is { Counter: true };
        return new Reading
        {
            Begin = begin,
            End = end,
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
            RainMm = counter ? double.NaN : Value(WeatherQuantity.Rain),
            RainCounterMm = counter ? Value(WeatherQuantity.Rain) : double.NaN,
            ReferenceEtMm = Value(WeatherQuantity.ReferenceEt),
            RainChancePercent = Value(WeatherQuantity.RainChance),
        };
    }
}
