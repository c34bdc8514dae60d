using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports;

/// <summary>Boxes at which starts or stations are to be taken out, put back or keyed in, whether or not a dial is turned there.</summary>
internal static class StartChanges
{
    /// <summary>In walking order.</summary>
    public static IReadOnlyList<string> Boxes(Site site, IReadOnlyList<ProgramAdvice> programs, SheetExceptions exceptions)
    {
        HashSet<string> all = new(
            [
                .. programs.Where(p => p.TakenOut.Count + p.StationsOut.Count > 0).Select(p => p.Key.Controller),
                .. exceptions.PutBack.Select(b => b.Program.Controller),
                .. exceptions.GrowIns.Where(g => g.IsKeyedIn || g.IsOver).Select(g => g.Program.Controller),
            ],
            StringComparer.Ordinal);
        return [.. site.Controllers.OrderBy(c => c.Route).Select(c => c.Id).Where(all.Contains)];
    }
}
