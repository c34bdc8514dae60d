using DailyAdjust.Reports.Tables;

namespace DailyAdjust.Reports.Html;

/// <summary>Numbers inside drawings.</summary>
internal static class Svg
{
    /// <summary>A place or length in the units of the view box, to a tenth.</summary>
    public static string N(double value) => Plain.Short(Math.Round(value, 1));
}
