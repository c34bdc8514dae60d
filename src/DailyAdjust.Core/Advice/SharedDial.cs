using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>A box with one dial for all of its programs: that cannot be off for one of them and on for the next.</summary>
public static class SharedDial
{
    /// <summary>The same advice; a program that must not run beside others that do leaves the dial (<see cref="ProgramAdvice.LeavesDial"/>).</summary>
    public static IReadOnlyList<ProgramAdvice> Mark(Site site, IReadOnlyList<ProgramAdvice> programs)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(programs);
        return [.. programs.Select(p => p.Advice == AdviceKind.Off && site.ControllerOf(p.Key.Controller)?.Applies == PercentApplies.Controller && programs.Any(o => string.Equals(o.Key.Controller, p.Key.Controller, StringComparison.Ordinal) && Runs(o))
            ? p with { LeavesDial = true }
            : p)];
    }

    private static bool Runs(ProgramAdvice program) => program.Advice is AdviceKind.Set or AdviceKind.Resume || (program.Advice is AdviceKind.Leave or AdviceKind.AsSet && !program.Present.IsOff);
}
