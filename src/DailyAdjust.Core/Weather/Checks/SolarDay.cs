namespace DailyAdjust.Core.Weather.Checks;

/// <summary>A day's radiation as the sensor has it against a clear sky's, interval by interval.</summary>
internal sealed class SolarDay(CheckNotes notes)
{
    /// <summary>A missing hour would move the middle of the radiation.</summary>
    private const double LeastShareForCentroid = 0.99;

    private const double MinutesPerRad = 24 * 60 / (2 * Math.PI);

    private double _energy;
    private double _clearSky;
    private double _east;
    private double _north;

    /// <summary>Takes in a reading that begins in the day; what a pyranometer cannot say is left out.</summary>
    public void Add(Reading reading)
    {
        var energy = reading.SolarRadiationMJPerM2;
        var length = reading.End - reading.Begin;
        if (double.IsNaN(energy) || energy * 1e6 / length.TotalSeconds > LimitsCheck.SolarMostWPerM2)
        {
            return;
        }

        if (length > TimeSpan.FromHours(1))
        {
            (_energy, _clearSky, _east) = (energy, notes.Sun.ClearSkyOfDayMJPerM2, double.NaN);
            return;
        }

        energy = Math.Max(0, energy);
        _energy += energy;
        _clearSky += notes.Sun.ClearSkyWPerM2(reading) * length.TotalSeconds / 1e6;
        if (energy > 0)
        {
            // On the circle of the day: a clock many hours off puts a part of the daylight beyond midnight.
            var (sine, cosine) = Math.SinCos((reading.Begin + (length / 2) - notes.Sun.Noon).TotalMinutes / MinutesPerRad);
            _east += energy * sine;
            _north += energy * cosine;
        }
    }

    /// <summary>Rs/Rso of the day; NaN where less than 90 % of the daylight (by its clear-sky radiation) is there, or the sun does not rise.</summary>
    public double Ratio => _clearSky > 0 && Share >= DayInputs.LeastShare ? _energy / _clearSky : double.NaN;

    /// <summary>How long after solar noon the middle of the day's radiation lies, minutes; NaN where any of it is missing.</summary>
    public double CentroidMinutes => _energy > 0 && Share >= LeastShareForCentroid ? Math.Atan2(_east, _north) * MinutesPerRad : double.NaN;

    private double Share => _clearSky / notes.Sun.ClearSkyOfDayMJPerM2;
}
