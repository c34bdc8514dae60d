using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports;

/// <summary>One line of a round box: a program, or all programs of a box that has one dial for all.</summary>
public sealed record RoundLine(IReadOnlyList<ProgramAdvice> Programs)
{
    public ProgramAdvice First => Programs[0];

    public bool IsWholeBox => Programs.Count > 1;
}

/// <summary>One controller to open, in walking order.</summary>
/// <param name="Order">1, 2, ... on this round.</param>
public sealed record RoundBox(int Order, string Controller, string Place, IReadOnlyList<RoundLine> Lines)
{
    /// <summary>The boxes with a dial to turn.</summary>
    /// <param name="programs">By controller in walking order.</param>
    /// <param name="site">Knows where the boxes stand.</param>
    public static IReadOnlyList<RoundBox> Of(IReadOnlyList<ProgramAdvice> programs, Site site) =>
    [
        .. programs.Where(p => p.NeedsVisit)
            .GroupBy(p => p.Key.Controller, StringComparer.Ordinal)
            .Select((box, i) => new RoundBox(i + 1, box.Key, site.ControllerOf(box.Key)?.Place ?? "", LinesOf(site.ControllerOf(box.Key), [.. box]))),
    ];

    private static IReadOnlyList<RoundLine> LinesOf(Controller? controller, IReadOnlyList<ProgramAdvice> programs)
    {
        var oneDial = programs.Count > 1
            && controller?.Applies == PercentApplies.Controller
            && !programs[0].LeavesDial
            && programs.All(p => p.Advice == programs[0].Advice && p.Percent == programs[0].Percent && p.Present == programs[0].Present);
        return oneDial ? [new RoundLine(programs)] : [.. programs.Select(p => new RoundLine([p]))];
    }
}

/// <summary>Programs by what happens to them. Visit + Leave + StaysOff + AsSet = all programs.</summary>
public sealed record RoundCounts(int Skip, int Change, int TurnOn, int SwitchOff, int Leave, int StaysOff, int AsSet)
{
    public int Visit => Skip + Change + TurnOn + SwitchOff;

    public static RoundCounts Of(IEnumerable<ProgramAdvice> programs) => Of([.. programs.Select(p => (p.Advice, p.NeedsVisit, p.Present.IsOff))]);

    /// <summary>The same of a sheet as it was issued.</summary>
    public static RoundCounts Of(IEnumerable<IssuedLine> lines) => Of([.. lines.Select(l => (l.Advice, l.Asks, l.Percent == 0))]);

    private static RoundCounts Of(IReadOnlyList<(AdviceKind Advice, bool Asks, bool IsOff)> programs)
    {
        var visits = programs.Where(p => p.Asks).ToList();
        var others = programs.Where(p => !p.Asks).ToList();
        var asSet = others.Count(p => p.Advice == AdviceKind.AsSet);
        var leave = others.Count(p => p.Advice == AdviceKind.Leave && !p.IsOff);
        return new RoundCounts(
            visits.Count(p => p.Advice == AdviceKind.Skip),
            visits.Count(p => p.Advice == AdviceKind.Set),
            visits.Count(p => p.Advice == AdviceKind.Resume),
            visits.Count(p => p.Advice == AdviceKind.Off),
            leave,
            others.Count - asSet - leave,
            asSet);
    }
}
