using System.Globalization;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Core.Sites;

/// <summary>Depths of water as a site's people read them: the one place that rounds them for words.</summary>
public static class DepthWords
{
    /// <summary>"0.64" or "16.3", halves up, by 15 digits: what a sum of doubles lacks in the sixteenth does not count. A depth that would read as none but is not reads "under 0.01".</summary>
    /// <param name="units">The site's.</param>
    /// <param name="mm">mm; at most <see cref="Depth.ToleranceMm"/> is none.</param>
    public static Phrase Number(UnitSystem units, double mm)
    {
        var isUs = units == UnitSystem.Us;
        var (value, least, format) = isUs ? (mm / Depth.MmPerInch, 0.01, "0.00") : (mm, 0.1, "0.0");
        return mm > Depth.ToleranceMm && value < least / 2
            ? $"under {(isUs ? "0.01" : "0.1")}"
            : Phrase.Verbatim((Math.Round((decimal)value, isUs ? 2 : 1, MidpointRounding.AwayFromZero) + 0m).ToString(format, CultureInfo.InvariantCulture));
    }

    /// <summary>"0.64 in", "16.3 mm".</summary>
    public static Phrase Of(UnitSystem units, double mm) => InUnit(units, Number(units, mm));

    /// <summary>A number with the unit of depth behind it.</summary>
    public static Phrase InUnit(UnitSystem units, Phrase number) => units == UnitSystem.Us ? Phrase.Of($"{number} in") : $"{number} mm";
}
