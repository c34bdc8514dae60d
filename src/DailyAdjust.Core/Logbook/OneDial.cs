using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>Boxes with one dial: the number of one program is the number of all of them. Being off is each program's own, since its starts can be taken out.</summary>
public static class OneDial
{
    /// <summary>The other programs on a program's dial, by the description in force on a date; none where every program has its own.</summary>
    public static IEnumerable<ProgramKey> Others(ProgramKey program, IReadOnlyList<SiteVersion> versions, DateOnly date) =>
        Of(SiteVersions.On(versions, date), program.Controller).Where(p => p != program);

    /// <summary>The programs of a controller that share one dial, in its order; empty where they don't.</summary>
    public static IEnumerable<ProgramKey> Of(Site site, string controller) =>
        site.ControllerOf(controller) is { Applies: PercentApplies.Controller, Programs.Count: > 1 } box ? box.Programs.Select(p => new ProgramKey(box.Id, p.Id)) : [];
}
