using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Irrigation;

/// <summary>What becomes of a finished day's rain on one soil: it only wets leaves, or part runs off and the rest reaches the soil.</summary>
/// <param name="InterceptedMm">Stayed on leaves.</param>
/// <param name="RunoffMm">Ran off.</param>
/// <param name="SoilShare">Share of each interval's rain that reaches the soil.</param>
internal readonly record struct RainOnZone(double InterceptedMm, double RunoffMm, double SoilShare)
{
    /// <summary>Rain below this share of the day's ETo wets only leaves. Source: [FAO56] ch. 8, p. 170.</summary>
    private const double LeafWettingShare = 0.2;

    public static RainOnZone OfDay(GaugeDay rain, double etoMm, Soil soil)
    {
        if (rain.RainMm is not ({ } total and > 0))
        {
            return default;
        }

        if (total < (LeafWettingShare * etoMm) - Depth.ToleranceMm)
        {
            return new RainOnZone(total, 0, 0);
        }

        var runoff = soil.CurveNumber is { } curveNumber ? StormRunoff.OfDay(total, curveNumber) : 0;
        return new RainOnZone(0, runoff, (total - runoff) / total);
    }
}
