namespace DailyAdjust.Core.Weather;

/// <summary>
/// Joins what arrived for one station: for every interval and every value the later arrival counts, a value that is
/// missing later does not erase the one that was known, and the order of the rows does not matter otherwise.
/// </summary>
public static class ReadingMerge
{
    /// <summary>One reading per interval begin, ascending.</summary>
    /// <param name="inArrivalOrder">Earliest arrival first; within one, a later row counts over an earlier one.</param>
    public static IReadOnlyList<Reading> Merge(IEnumerable<IReadOnlyList<Reading>> inArrivalOrder)
    {
        IReadOnlyList<IReadOnlyList<Reading>> blocks = [.. inArrivalOrder.Where(block => block.Count > 0)];
        if (blocks is [] || (blocks is [var only] && IsAscending(only)))
        {
            return blocks is [] ? [] : blocks[0];
        }

        var byBegin = new SortedList<DateTimeOffset, Reading>();
        foreach (var block in blocks)
        {
            foreach (var reading in block)
            {
                byBegin[reading.Begin] = byBegin.TryGetValue(reading.Begin, out var earlier) ? Later(earlier, reading) : reading;
            }
        }

        return [.. byBegin.Values];
    }

    private static bool IsAscending(IReadOnlyList<Reading> readings)
    {
        for (var i = 1; i < readings.Count; i++)
        {
            if (readings[i].Begin <= readings[i - 1].Begin)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The two readings of one begin as one; intervals of different length are different measurements, and the later stands alone.</summary>
    public static Reading Later(Reading earlier, Reading later) =>
        earlier.End != later.End ? later : later with
        {
            AirTemperatureC = Known(later.AirTemperatureC, earlier.AirTemperatureC),
            AirTemperatureMaxC = Known(later.AirTemperatureMaxC, earlier.AirTemperatureMaxC),
            AirTemperatureMinC = Known(later.AirTemperatureMinC, earlier.AirTemperatureMinC),
            RelativeHumidityPercent = Known(later.RelativeHumidityPercent, earlier.RelativeHumidityPercent),
            RelativeHumidityMaxPercent = Known(later.RelativeHumidityMaxPercent, earlier.RelativeHumidityMaxPercent),
            RelativeHumidityMinPercent = Known(later.RelativeHumidityMinPercent, earlier.RelativeHumidityMinPercent),
            DewPointC = Known(later.DewPointC, earlier.DewPointC),
            WindSpeedMPerS = Known(later.WindSpeedMPerS, earlier.WindSpeedMPerS),
            SolarRadiationMJPerM2 = Known(later.SolarRadiationMJPerM2, earlier.SolarRadiationMJPerM2),
            SunshineH = Known(later.SunshineH, earlier.SunshineH),
            RainMm = Known(later.RainMm, earlier.RainMm),
            RainCounterMm = Known(later.RainCounterMm, earlier.RainCounterMm),
            ReferenceEtMm = Known(later.ReferenceEtMm, earlier.ReferenceEtMm),
            RainChancePercent = Known(later.RainChancePercent, earlier.RainChancePercent),
            Marks = Marks(earlier.Marks, later.Marks),
        };

    /// <summary>What is said of a quantity later takes the place of what was said of it earlier.</summary>
    private static IReadOnlyList<ValueMark> Marks(IReadOnlyList<ValueMark> earlier, IReadOnlyList<ValueMark> later) =>
        earlier.Count == 0 ? later
        : later.Count == 0 ? earlier
        : [.. earlier.Where(mark => !later.Any(l => l.Quantity == mark.Quantity)).Concat(later).OrderBy(mark => mark.Quantity)];

    private static double Known(double later, double earlier) => double.IsNaN(later) ? earlier : later;
}
