using DailyAdjust.Core.Weather;

namespace DailyAdjust.Fuzz.Checks;

/// <summary>A value of weather that was read is missing or a finite number.</summary>
internal static class ReadingRanges
{
    public static void Check(Reading reading)
    {
        foreach (var value in (double[])[
            reading.AirTemperatureC, reading.AirTemperatureMaxC, reading.AirTemperatureMinC, reading.RelativeHumidityPercent, reading.RelativeHumidityMaxPercent, reading.RelativeHumidityMinPercent,
            reading.DewPointC, reading.WindSpeedMPerS, reading.SolarRadiationMJPerM2, reading.SunshineH, reading.RainMm, reading.ReferenceEtMm, reading.RainChancePercent, reading.RainCounterMm])
        {
            Hold.That(!double.IsInfinity(value), $"a value at {reading.Begin:u} is {value}");
        }
    }
}
