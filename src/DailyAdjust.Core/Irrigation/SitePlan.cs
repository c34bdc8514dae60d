using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Irrigation;

/// <summary>A site's programs and zones, laid out once for all mornings on which its description holds.</summary>
internal sealed class SitePlan
{
    private readonly Dictionary<ProgramKey, ZonePlan[]> _zonesOf;
    private readonly Dictionary<ProgramKey, int> _ranks;

    public SitePlan(Site site)
    {
        Site = site;
        Programs = ZonePlan.AllPrograms(site);
        Zones = ZonePlan.Of(site, Programs);
        var zones = Zones.SelectMany(z => z.Programs.Select(p => (p.Program.Key, Zone: z))).ToLookup(x => x.Key, x => x.Zone);
        _zonesOf = Programs.ToDictionary(p => p.Key, p => zones[p.Key].ToArray());
        _ranks = Programs.ToDictionary(p => p.Key, p => site.PriorityOf(_zonesOf[p.Key].Select(z => z.Station.Area.Name)));
    }

    public Site Site { get; }

    /// <summary>In station order.</summary>
    public IReadOnlyList<ZonePlan> Zones { get; }

    /// <summary>By controller, in its order.</summary>
    public IReadOnlyList<PlannedProgram> Programs { get; }

    /// <summary>The zones that a program waters, in station order.</summary>
    public IReadOnlyList<ZonePlan> ZonesOf(PlannedProgram program) => _zonesOf[program.Key];

    /// <summary>Place of the program's most important area in the site's order of priority, 0 the first.</summary>
    public int RankOf(PlannedProgram program) => _ranks[program.Key];
}
