using System.Globalization;

namespace DailyAdjust.Core.Weather;

/// <summary>The one place where arguments of public calculations are checked; a value out of range is a caller's bug.</summary>
internal static class Require
{
    /// <summary>Returns the value if it is a number from <paramref name="least"/> to <paramref name="most"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside the range.</exception>
    public static double Within(double value, double least, double most, string name) =>
        value >= least && value <= most ? value : throw Outside(value, least, most, name);

    // Apart from the check, which stands in every equation's way and stays small enough to be compiled into it.
    private static ArgumentOutOfRangeException Outside(double value, double least, double most, string name) =>
        new(name, value, string.Create(CultureInfo.InvariantCulture, $"Must lie between {least} and {most}."));
}
