namespace DailyAdjust.Core.Advice;

/// <summary>
/// The reference ET of a day of which a part has been measured: what was measured up to an instant, and of what was expected of the whole day the share that the draw
/// curve leaves after it. Nothing counts twice; within each part the draw keeps the curve's shape.
/// </summary>
/// <param name="SoFarMm">Measured from 00:00, mm, 0 or more.</param>
/// <param name="ShareThen">The draw curve at the end of what was measured, above 0 to 1.</param>
/// <param name="WholeDayMm">What was expected of the whole day, mm.</param>
internal sealed record DrawnToday(double SoFarMm, double ShareThen, double WholeDayMm)
{
    /// <summary>Expected of the rest of the day, mm.</summary>
    public double RestMm => WholeDayMm * (1 - ShareThen);

    public double TotalMm => SoFarMm + RestMm;

    /// <summary>The share of the total that is drawn where the draw curve stands at a share; the curve itself where there is nothing to draw.</summary>
    public double ShareOf(double share)
    {
        if (TotalMm <= 0)
        {
            return share;
        }

        var drawnMm = share <= ShareThen ? SoFarMm * share / ShareThen : SoFarMm + (WholeDayMm * (share - ShareThen));
        return drawnMm / TotalMm;
    }
}
