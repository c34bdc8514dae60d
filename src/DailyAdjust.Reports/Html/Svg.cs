using DailyAdjust.Reports.Tables;

namespace DailyAdjust.Reports.Html;

/// <summary>Numbers inside drawings.</summary>
internal static class Svg
{
    /// <summary>Labels as wide as a date stay inside the drawing that ends right of the last one.</summary>
    private const double HalfDate = 24;

    /// <summary>How a label under a mark stands to it: its middle, or near the right edge its end.</summary>
    /// <param name="x">The mark.</param>
    /// <param name="right">The last place on which something may stand.</param>
    public static (double X, string Anchor) Under(double x, double right) => x > right - HalfDate ? (right, "end") : (x, "middle");

    /// <summary>A place or length in the units of the view box, to a tenth.</summary>
    public static string N(double value) => Plain.Short(Math.Round(value, 1));
}
