using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Irrigation;

/// <summary>A span in which a rain switch keeps the valves shut.</summary>
/// <param name="From">UTC, when its rain reached the amount.</param>
/// <param name="Ends">UTC, when it lets water run again.</param>
/// <param name="Gauge">The gauge that stands for it.</param>
/// <param name="RainMm">What fell in all, mm.</param>
public sealed record ShutSpan(DateTimeOffset From, DateTimeOffset Ends, string Gauge, double RainMm);

/// <summary>
/// When the rain switches of a site's boxes keep valves shut. Rain adds up until the switch has been dry for its time; from the amount
/// on it shuts, until that time after the last rain. Every instant looks at the rain of the 45 days before it and at nothing else, so
/// that it makes no difference where a balance begins. Source: common practice.
/// </summary>
internal sealed class RainSwitches
{
    private readonly Dictionary<string, (RainSwitch Built, string Gauge, List<RainFall> Falls)> _boxes = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Controller, DateTimeOffset Instant), ShutSpan?> _known = [];

    /// <param name="site">Its boxes.</param>
    /// <param name="days">Rain by gauge and day, in order of time; those of the 45 days before the first instant asked for are needed.</param>
    public RainSwitches(Site site, IEnumerable<GaugeDay> days)
    {
        if (site.Controllers.All(c => c.RainSwitch is null))
        {
            return;
        }

        var falls = days.SelectMany(d => d.Falls.Where(f => f.Mm > 0).Select(f => (d.Gauge, Fall: f))).ToLookup(f => f.Gauge, f => f.Fall, StringComparer.Ordinal);
        foreach (var controller in site.Controllers)
        {
            if (controller.RainSwitch is { } built && GaugeOf(site, controller, built) is { } gauge)
            {
                _boxes[controller.Id] = (built, gauge, [.. falls[gauge]]);
            }
        }
    }

    /// <summary>The span in which an instant lies; null = water can run.</summary>
    public ShutSpan? At(string controller, DateTimeOffset instant)
    {
        if (!_boxes.TryGetValue(controller, out var box))
        {
            return null;
        }

        if (!_known.TryGetValue((controller, instant), out var span))
        {
            _known[(controller, instant)] = span = SpanOf(box.Built, box.Gauge, box.Falls, instant);
        }

        return span;
    }

    private static ShutSpan? SpanOf(RainSwitch built, string gauge, List<RainFall> falls, DateTimeOffset instant)
    {
        var (sum, dry, from) = (0.0, DateTimeOffset.MinValue, (DateTimeOffset?)null);
        foreach (var fall in falls.Where(f => f.At <= instant && f.At >= instant.AddDays(-LookBack.Days)))
        {
            if (fall.At >= dry)
            {
                (sum, from) = (0, null);
            }

            sum += fall.Mm;
            dry = fall.At + built.DryAfter;
            from ??= sum >= built.Mm - Depth.ToleranceMm ? fall.At : null;
        }

        return from is { } began && instant < dry ? new ShutSpan(began, dry, gauge, sum) : null;
    }

    /// <summary>The gauge of most of the box's stations, the first of equals.</summary>
    private static string? GaugeOf(Site site, Controller controller, RainSwitch built) => built.Gauge ?? site.Stations
        .Where(s => string.Equals(s.Key.Controller, controller.Id, StringComparison.Ordinal))
        .GroupBy(s => s.Gauge, StringComparer.Ordinal)
        .MaxBy(g => g.Count())?.Key;
}
