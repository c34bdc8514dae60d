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
        if (monthly.Count != 12)
        {
            throw new ArgumentException("Kc needs 12 monthly values.", nameof(monthly));
        }

        var thisMid = new DateOnly(date.Year, date.Month, MidMonthDay);
        var from = date.Day >= MidMonthDay ? thisMid : thisMid.AddMonths(-1);
        var to = from.AddMonths(1);
        double a = monthly[from.Month - 1], b = monthly[to.Month - 1];
        return a + ((b - a) * (date.DayNumber - from.DayNumber) / (to.DayNumber - from.DayNumber));
    }
}
