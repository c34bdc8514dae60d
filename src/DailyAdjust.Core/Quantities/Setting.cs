using System.Globalization;

namespace DailyAdjust.Core.Quantities;

/// <summary>
/// What a person last put on a program: a percentage of the base minutes, or off.
/// The default is off. A percentage is above 0 and at most 1000.
/// </summary>
public readonly record struct Setting
{
    /// <summary>The largest percentage that any calculation looks at.</summary>
    public const double LargestPercent = 1000;

    /// <param name="percent">Percent of base minutes, above 0 and at most 1000; 0 is off.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, negative, or above 1000.</exception>
    public Setting(double percent)
    {
        if (double.IsNaN(percent) || percent is < 0 or > LargestPercent)
        {
            throw new ArgumentOutOfRangeException(nameof(percent), percent, "A setting lies between 0 (off) and 1000 %.");
        }

        Percent = percent;
    }

    public static Setting Off => default;

    public static Setting Full => new(100);

    /// <summary>Percent of base minutes; 0 when off.</summary>
    public double Percent { get; }

    public bool IsOff => Percent == 0;

    public override string ToString() =>
        IsOff ? "off" : Percent.ToString("0.##", CultureInfo.InvariantCulture) + " %";
}
