namespace DailyAdjust.Core.Agronomy;

/// <summary>Turf coefficient through the year.</summary>
public static class CropCoefficient
{
    /// <summary>The day of each month on which its value holds.</summary>
    private const int MidMonthDay = 15;

    /// <summary>Kc on a date: linear between the 15ths of the months.</summary>
    /// <param name="monthly">12 values, January first.</param>
    /// <param name="date">Any date.</param>
    /// <returns>Dimensionless, between the two neighbouring monthly values.</returns>
    /// <exception cref="ArgumentException">Not 12 values.</exception>
    public static double On(IReadOnlyList<double> monthly, DateOnly date)
    {
        var (from, to, since, days) = Around(monthly, date);
        return from + ((to - from) * since / days);
    }

    /// <summary>The two monthly values around a date, how many days after the first it lies, and how far apart they are.</summary>
    internal static (double From, double To, int DaysSince, int Days) Around(IReadOnlyList<double> monthly, DateOnly date)
    {
        if (monthly.Count != 12)
        {
            throw new ArgumentException("Kc needs 12 monthly values.", nameof(monthly));
        }

        // From the 15th of one month to the 15th of the next are as many days as the first has.
        var (year, month, day) = date;
        var since = day - MidMonthDay;
        if (since < 0)
        {
            (year, month) = month > 1 ? (year, month - 1) : (Math.Max(1, year - 1), 12);
            since += DateTime.DaysInMonth(year, month);
        }

        return (monthly[month - 1], monthly[month % 12], since, DateTime.DaysInMonth(year, month));
    }
}
