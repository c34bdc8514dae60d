namespace DailyAdjust.Core.Weather.Checks;

/// <summary>The middle of some values: half of them lie below, half above.</summary>
internal static class Middle
{
    /// <param name="values">At least one; stays as it is. Of an even number the lower middle one.</param>
    public static double Of(IReadOnlyList<double> values) => values.Order().ElementAt((values.Count - 1) / 2);
}
