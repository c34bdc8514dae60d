using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>The site's programs with the starts that a sheet proposes, and what runs at them.</summary>
/// <param name="Programs">With those starts.</param>
/// <param name="Percents">What every program runs at; 0 = off.</param>
internal sealed record ProposedStarts(IReadOnlyList<PlannedProgram> Programs, IReadOnlyDictionary<ProgramKey, double> Percents)
{
    /// <summary>By how much those start otherwise than on the site for which other starts are proposed.</summary>
    public IReadOnlyDictionary<ProgramKey, TimeSpan> MovedBy { get; private init; } = new Dictionary<ProgramKey, TimeSpan>();

    /// <param name="moved">With its other starts.</param>
    /// <param name="by">By how much they differ from those on the site; 0 = they are those.</param>
    public ProposedStarts With(PlannedProgram moved, TimeSpan by) => this with
    {
        Programs = [.. Programs.Select(p => p.Key == moved.Key ? moved : p)],
        MovedBy = new Dictionary<ProgramKey, TimeSpan>(MovedBy) { [moved.Key] = by },
    };

    /// <summary>The programs of one box alone.</summary>
    public ProposedStarts Of(Controller controller) => this with { Programs = [.. Programs.Where(p => ReferenceEquals(p.Controller, controller))] };

    /// <summary>All others.</summary>
    public ProposedStarts Without(Controller controller) => this with { Programs = [.. Programs.Where(p => !ReferenceEquals(p.Controller, controller))] };

    public IReadOnlyList<PlannedRun> Runs(Nights nights) => nights.Runs(key => Percents[key], Programs, MovedBy);
}
