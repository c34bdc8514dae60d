using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Json;

namespace DailyAdjust.Reports;

/// <summary>Boxes at which starts or stations are to be taken out, put back or keyed in, whether or not a dial is turned there.</summary>
internal static class StartChanges
{
    /// <summary>In walking order.</summary>
    public static IReadOnlyList<string> Boxes(MorningSheet sheet)
    {
        var exceptions = sheet.Exceptions;
        return InOrder(
            sheet.Site,
            sheet.Programs.Where(p => p.TakenOut.Count + p.StationsOut.Count > 0).Select(p => p.Key.Controller),
            exceptions.PutBack.Select(b => b.Program.Controller),
            exceptions.GrowIns.Where(g => g.IsKeyedIn || g.IsOver).Select(g => g.Program.Controller));
    }

    /// <summary>The same of a sheet as it was issued.</summary>
    public static IReadOnlyList<string> Boxes(AdviceDocument document, Site site) => InOrder(
        site,
        document.Programs.Where(p => p.TakenOut is { Count: > 0 } || p.StationsOut is { Count: > 0 }).Select(p => p.Controller),
        (document.Exceptions?.PutBack ?? []).Select(b => b.Controller),
        (document.Exceptions?.GrowIns ?? []).Where(g => g.IsKeyedIn || g.Over).Select(g => g.Controller));

    private static IReadOnlyList<string> InOrder(Site site, params ReadOnlySpan<IEnumerable<string>> boxes)
    {
        var all = new HashSet<string>(StringComparer.Ordinal);
        foreach (var some in boxes)
        {
            all.UnionWith(some);
        }

        return [.. site.Controllers.OrderBy(c => c.Route).Select(c => c.Id).Where(all.Contains)];
    }
}
