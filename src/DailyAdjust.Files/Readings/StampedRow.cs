using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Files.Readings;

/// <summary>A row whose cells have been read and whose instant is still to be found. The next row takes its place, unless somebody keeps it.</summary>
/// <param name="map">Which columns carry the time and the quantities.</param>
internal sealed class StampedRow(ColumnMap map)
{
    private static readonly int QuantityCount = Enum.GetValues<WeatherQuantity>().Length;

    private readonly ValueColumn[] _columns = map.Values;
    private readonly double[] _values = new double[map.Values.Length];

    /// <summary>By what it is read.</summary>
    public ColumnMap Map => map;

    /// <summary>From 1.</summary>
    public int Line { get; private set; }

    /// <summary>The cell that the time stands in, from 1.</summary>
    public int TimeColumn => map.Time + 1;

    /// <summary>As the row says it: UTC where the text carries an offset, else on the clock that wrote the file.</summary>
    public DateTime Stamp { get; private set; }

    /// <summary>Whoever looks at it after the next row was read says so.</summary>
    public bool IsKept { get; set; }

    /// <summary>Values of this row that are no number.</summary>
    public int SetAside { get; set; }

    /// <summary>Whether the row says anything at all: an interval of missing values is no reading.</summary>
    public bool HasValue { get; private set; }

    /// <summary>A row without values as yet.</summary>
    public void Begin(int line, DateTime stamp)
    {
        (Line, Stamp, SetAside, HasValue) = (line, stamp, 0, false);
        Clear(_values);
    }

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
        Clear(found);
        var counter = double.NaN;
        for (var i = 0; i < _values.Length; i++)
        {
            var unit = _columns[i].Unit;
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

    /// <summary>Value by value: the library's filling is not compiled ahead, and a short file is read before it is compiled well.</summary>
    private static void Clear(Span<double> values)
    {
        foreach (ref var value in values)
        {
            value = double.NaN;
        }
    }
}
