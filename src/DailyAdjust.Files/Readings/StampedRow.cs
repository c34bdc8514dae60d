using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Files.Readings;

/// <summary>A row whose cells have been read and whose instant is still to be found.</summary>
/// <param name="columns">The columns that carry quantities.</param>
internal sealed class StampedRow(IReadOnlyList<ValueColumn> columns)
{
    private static readonly int QuantityCount = Enum.GetValues<WeatherQuantity>().Length;

    private readonly double[] _values = Missing(columns.Count);

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

    /// <param name="column">Which of the columns.</param>
    /// <param name="value">As the file has it.</param>
    public void Put(int column, double value)
    {
        _values[column] = value;
        HasValue = true;
    }

    public Reading ToReading(DateTimeOffset begin, DateTimeOffset end)
    {
        Span<double> found = stackalloc double[QuantityCount];
        found.Fill(double.NaN);
        var counter = double.NaN;
        for (var i = 0; i < _values.Length; i++)
        {
            var unit = columns[i].Unit;
            var value = double.IsNaN(_values[i]) ? double.NaN : unit.ToReading(_values[i], end - begin);
            if (unit.Counter)
            {
                counter = value;
            }
            else
            {
                found[(int)unit.Quantity] = value;
            }
        }

        return new Reading
        {
            Begin = begin,
            End = end,
            AirTemperatureC = found[(int)WeatherQuantity.AirTemperature],
            AirTemperatureMaxC = found[(int)WeatherQuantity.AirTemperatureMax],
            AirTemperatureMinC = found[(int)WeatherQuantity.AirTemperatureMin],
            RelativeHumidityPercent = found[(int)WeatherQuantity.RelativeHumidity],
            RelativeHumidityMaxPercent = found[(int)WeatherQuantity.RelativeHumidityMax],
            RelativeHumidityMinPercent = found[(int)WeatherQuantity.RelativeHumidityMin],
            DewPointC = found[(int)WeatherQuantity.DewPoint],
            WindSpeedMPerS = found[(int)WeatherQuantity.WindSpeed],
            SolarRadiationMJPerM2 = found[(int)WeatherQuantity.SolarRadiation],
            SunshineH = found[(int)WeatherQuantity.Sunshine],
            RainMm = found[(int)WeatherQuantity.Rain],
            RainCounterMm = counter,
            ReferenceEtMm = found[(int)WeatherQuantity.ReferenceEt],
            RainChancePercent = found[(int)WeatherQuantity.RainChance],
        };
    }

    private static double[] Missing(int count)
    {
        var values = new double[count];
        Array.Fill(values, double.NaN);
        return values;
    }
}
