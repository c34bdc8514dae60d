using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Irrigation;

/// <summary>A site's programs and zones, laid out once for all mornings on which its description holds.</summary>
internal sealed class SitePlan
{
    private readonly Dictionary<ProgramKey, ZonePlan[]> _zonesOf;

    public SitePlan(Site site)
    {
        Zones = ZonePlan.Of(site);
        Programs = ZonePlan.AllPrograms(site);
        _zonesOf = Programs.ToDictionary(p => p.Key, p => Zones
            .Where(z => string.Equals(z.Station.Key.Controller, p.Key.Controller, StringComparison.Ordinal) && z.Station.BaseMinutes.ContainsKey(p.Key.Program))
            .ToArray());
    }

    /// <summary>In station order.</summary>
    public IReadOnlyList<ZonePlan> Zones { get; }

    /// <summary>By controller, in its order.</summary>
    public IReadOnlyList<PlannedProgram> Programs { get; }

    /// <summary>The zones that a program waters, in station order.</summary>
    public IReadOnlyList<ZonePlan> ZonesOf(PlannedProgram program) => _zonesOf[program.Key];
}
