using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Plain;

namespace DailyAdjust.Benchmarks;

/// <summary>A year of invented daily weather at each of many stations, a row each, as a table that somebody keeps.</summary>
internal sealed class EtoDays
{
    private const int Stations = 50;
    private const int Days = 365;
    public const int Rows = Stations * Days;

    private readonly double[] _eto = new double[Rows];

    private EtoDays()
    {
    }

    /// <summary>Latitude, elevation, height of the wind, day of the year, Tmax, Tmin, RHmax, RHmin, wind, Rs.</summary>
    public double[][] Columns { get; } = [.. Enumerable.Range(0, 10).Select(_ => new double[Rows])];

    public static EtoDays Invented()
    {
        var days = new EtoDays();
        var dice = new Dice(3);
        for (var i = 0; i < Rows; i++)
        {
            var (station, day) = (i / Days, (i % Days) + 1);
            var season = Math.Cos(2 * Math.PI * (day - 196) / 365.25);
            var mean = 11 + (14 * season) + dice.Between(-4, 4);
            var range = dice.Between(3, 9);
            double[] row =
            [
                30 + (station * 0.31), 40 + (station * 23), station % 3 == 0 ? 2 : 3 + (station % 8), day, mean + range, mean - range,
                dice.Between(70, 100), dice.Between(20, 65), dice.Between(0.3, 6), dice.Between(0.2, 1) * (17 + (11 * season)),
            ];
            for (var c = 0; c < row.Length; c++)
            {
                days.Columns[c][i] = row[c];
            }
        }

        return days;
    }

    /// <summary>From the day's figures to its reference ET in the steps that the program takes.</summary>
    public double[] Ours()
    {
        var c = Columns;
        for (var i = 0; i < _eto.Length; i++)
        {
            var (max, min) = (c[4][i], c[5][i]);
            var saturation = DaySaturation.Of(max, min);
            _eto[i] = ReferenceEtDaily.EtoMm(new DailyAir
            {
                AirTemperatureMaxC = max,
                AirTemperatureMinC = min,
                VapourPressureKPa = saturation.VapourPressureKPa(c[6][i], c[7][i]),
                Saturation = saturation,
                WindSpeed2mMPerS = Atmosphere.WindSpeed2mMPerS(c[8][i], c[2][i]),
                SolarRadiationMJPerM2Day = c[9][i],
                ExtraterrestrialRadiationMJPerM2Day = Sun.ExtraterrestrialRadiationMJPerM2Day(c[0][i], (int)c[3][i]),
                ElevationM = c[1][i],
            });
        }

        return _eto;
    }

    public double[] InC(LoopsInC loops)
    {
        var c = Columns;
        loops.EtoDays(Rows, c[0], c[1], c[2], c[3], c[4], c[5], c[6], c[7], c[8], c[9], _eto);
        return _eto;
    }
}
