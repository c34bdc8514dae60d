using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Morning;

/// <summary>What a later look of the day knows that the first one did not.</summary>
/// <param name="AsOf">Its instant, UTC.</param>
/// <param name="StartsFrom">It speaks about starts from here on, UTC.</param>
/// <param name="AfterRound">The day's round was to be done before it: it asks for a walk of its own.</param>
/// <param name="Eto">Reference ET measured since midnight; null = none is, and the whole day counts as expected.</param>
/// <param name="RestMm">Reference ET expected of the rest of the day, mm; null = nothing was measured, or there is no sound advice.</param>
public sealed record SecondLook(DateTimeOffset AsOf, DateTimeOffset StartsFrom, bool AfterRound, EtoSoFar? Eto, double? RestMm);

/// <summary>A later look of the day.</summary>
internal static class SecondLookPart
{
    public static SecondLook? Of(MorningInputs inputs, AdviceContext context) =>
        context.Site.Report.IsLaterLook(context.Site.Clock, inputs.Date, inputs.AsOf)
            ? new SecondLook(
                inputs.AsOf,
                context.RoundDone,
                context.Site.Report.IsAfterRound(context.Site.Clock, inputs.Date, inputs.AsOf),
                context.Drawn is null ? null : inputs.EtoSoFar,
                context.Drawn?.RestMm)
            : null;

    /// <summary>How the day's reference ET is drawn; null = nothing of it is measured after sunrise, or nothing tells what to expect.</summary>
    public static DrawnToday? Drawn(MorningInputs inputs, Site site)
    {
        if (inputs.EtoSoFar is not { } soFar || inputs.ExpectedEtoMm(inputs.Date, site) is not { } wholeDay)
        {
            return null;
        }

        var sun = Sun.Day(site, inputs.Date);
        var share = new DrawCurve(sun.Sunrise, sun.Sunset).ShareBy(soFar.Through);
        return share > 0 ? new DrawnToday(soFar.Mm, share, wholeDay) : null;
    }
}
