using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>rain_switch of a controller: from which rain on, and for how long, it keeps the valves shut.</summary>
internal static class RainSwitchSection
{
    public static RainSwitch? Read(Section? section, IReadOnlyList<Gauge> gauges)
    {
        if (section is null)
        {
            return null;
        }

        var mm = section.NeedQuantity("at", UnitKind.Depth, new(0, 100, AboveMin: true), "0.25 in");
        var minutes = section.NeedQuantity("dry_after", UnitKind.Duration, new(0, RainSwitch.MostDays * 1440, AboveMin: true), "24 h");
        var gauge = AreaSection.Gauge(section, gauges);
        section.Done();
        return new RainSwitch(mm, TimeSpan.FromMinutes(minutes)) { Gauge = gauge };
    }
}
