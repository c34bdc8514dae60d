using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>The programs that a site ever had, by the places that entries speak of: a long logbook asks often.</summary>
internal sealed class CoveredPrograms
{
    private readonly List<ProgramKey> _all;
    private readonly ILookup<string, ProgramKey> _ofBox;
    private readonly HashSet<ProgramKey> _known;

    public CoveredPrograms(IReadOnlyList<SiteVersion> versions)
    {
        _all = [.. versions.SelectMany(v => v.Site.Controllers.SelectMany(c => c.Programs.Select(p => new ProgramKey(c.Id, p.Id)))).Distinct()];
        _ofBox = _all.ToLookup(p => p.Controller, StringComparer.Ordinal);
        _known = [.. _all];
    }

    public IReadOnlyList<ProgramKey> All => _all;

    public bool Has(ProgramKey program) => _known.Contains(program);

    /// <summary>Those that an entry at a place speaks of, in order of site version and controller.</summary>
    public IEnumerable<ProgramKey> By(Place where) => where.Kind switch
    {
        PlaceKind.Controller or PlaceKind.Program => _ofBox[where.Name].Where(p => where.Covers(p)),
        _ => _all.Where(p => where.Covers(p)),
    };
}
