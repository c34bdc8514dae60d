namespace DailyAdjust.Core.Weather.Checks;

/// <summary>A day's radiation as the sensor has it against a clear sky's, interval by interval.</summary>
internal sealed class SolarDay(CheckNotes notes)
{
    /// <summary>A missing hour would move the middle of the radiation.</summary>
    private const double LeastShareForCentroid = 0.99;

    private double _energy;
    private double _clearSky;
    private double _moment;

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
            (_energy, _clearSky, _moment) = (energy, notes.Sun.ClearSkyOfDayMJPerM2, double.NaN);
            return;
        }

        energy = Math.Max(0, energy);
        _energy += energy;
        _clearSky += notes.Sun.ClearSkyWPerM2(reading) * length.TotalSeconds / 1e6;
        _moment += energy * (reading.Begin + (length / 2) - notes.Sun.Noon).TotalMinutes;
    }

    /// <summary>Rs/Rso of the day; NaN where less than 90 % of the daylight (by its clear-sky radiation) is there, or the sun does not rise.</summary>
    public double Ratio => _clearSky > 0 && Share >= DayInputs.LeastShare ? _energy / _clearSky : double.NaN;

    /// <summary>How long after solar noon the middle of the day's radiation lies, minutes; NaN where any of it is missing.</summary>
    public double CentroidMinutes => _energy > 0 && Share >= LeastShareForCentroid ? _moment / _energy : double.NaN;

    private double Share => _clearSky / notes.Sun.ClearSkyOfDayMJPerM2;
}
