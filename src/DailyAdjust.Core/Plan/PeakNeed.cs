using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Plan;

/// <summary>What a zone's turf draws in a mean month, from normals.</summary>
public static class PeakNeed
{
    /// <summary>ETo × Kc × exposure on a mean day of a month, mm; Kc as on the month's 15th. Source: [FAO56] eq. 58, p. 103.</summary>
    /// <param name="station">Its area's Kc and its exposure.</param>
    /// <param name="etoMmPerDay">12 monthly means, January first.</param>
    /// <param name="month">1 to 12.</param>
    public static double MmPerDay(Station station, IReadOnlyList<double> etoMmPerDay, int month) =>
        etoMmPerDay[month - 1] * station.Area.Kc[month - 1] * station.Exposure;

    /// <summary>The month, 1 to 12, in which the zone draws most a day; the first of several.</summary>
    public static int Month(Station station, IReadOnlyList<double> etoMmPerDay) =>
        Enumerable.Range(1, 12).MaxBy(month => MmPerDay(station, etoMmPerDay, month));

    /// <summary>On a mean day of that month, mm.</summary>
    public static double MmPerDay(Station station, IReadOnlyList<double> etoMmPerDay) => MmPerDay(station, etoMmPerDay, Month(station, etoMmPerDay));

    /// <summary>Share of a month's days on which a program starts: weekdays by the week, every n-th by n, odd and even by the month.</summary>
    /// <returns>Above 0 to 1 for a program that ever starts.</returns>
    public static double ShareOfDays(WaterDays days, int month) => days switch
    {
        WaterDays.Weekdays weekdays => weekdays.Days.Distinct().Count() / 7.0,
        WaterDays.EveryNth every => 1.0 / every.Days,
        WaterDays.OddDays => Math.Ceiling(DaysIn(month) / 2.0) / DaysIn(month),
        WaterDays.EvenDays => Math.Floor(DaysIn(month) / 2.0) / DaysIn(month),
        _ => 1,
    };

    /// <summary>Of a common year.</summary>
    public static int DaysIn(int month) => DateTime.DaysInMonth(2001, month);
}
