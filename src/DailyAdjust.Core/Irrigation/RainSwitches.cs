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
/// on it shuts, until that time after the last rain. Source: common practice.
/// </summary>
internal sealed class RainSwitches
{
    private readonly Dictionary<string, List<ShutSpan>> _spans = new(StringComparer.Ordinal);

    /// <param name="site">Its boxes.</param>
    /// <param name="days">Rain by gauge and day, in order of time; those of the last week before the first instant asked for are needed.</param>
    public RainSwitches(Site site, IEnumerable<GaugeDay> days)
    {
        if (site.Controllers.All(c => c.RainSwitch is null))
        {
            return;
        }

        var falls = days.SelectMany(d => d.Falls.Select(f => (d.Gauge, Fall: f))).ToLookup(f => f.Gauge, f => f.Fall, StringComparer.Ordinal);
        foreach (var controller in site.Controllers)
        {
            if (controller.RainSwitch is { } built && GaugeOf(site, controller, built) is { } gauge)
            {
                _spans[controller.Id] = Spans(built, gauge, falls[gauge]);
            }
        }
    }

    /// <summary>The span in which an instant lies; null = water can run.</summary>
    public ShutSpan? At(string controller, DateTimeOffset instant) =>
        _spans.TryGetValue(controller, out var spans) ? spans.Find(s => s.From <= instant && instant < s.Ends) : null;

    private static List<ShutSpan> Spans(RainSwitch built, string gauge, IEnumerable<RainFall> falls)
    {
        var spans = new List<ShutSpan>();
        var (sum, dry, from) = (0.0, DateTimeOffset.MinValue, (DateTimeOffset?)null);
        void Close()
        {
            if (from is { } began)
            {
                spans.Add(new ShutSpan(began, dry, gauge, sum));
            }

            (sum, from) = (0, null);
        }

        foreach (var fall in falls.Where(f => f.Mm > 0))
        {
            if (fall.At >= dry)
            {
                Close();
            }

            sum += fall.Mm;
            dry = fall.At + built.DryAfter;
            from ??= sum >= built.Mm ? fall.At : null;
        }

        Close();
        return spans;
    }

    /// <summary>The gauge of most of the box's stations, the first of equals.</summary>
    private static string? GaugeOf(Site site, Controller controller, RainSwitch built) => built.Gauge ?? site.Stations
        .Where(s => string.Equals(s.Key.Controller, controller.Id, StringComparison.Ordinal))
        .GroupBy(s => s.Gauge, StringComparer.Ordinal)
        .MaxBy(g => g.Count())?.Key;
}
