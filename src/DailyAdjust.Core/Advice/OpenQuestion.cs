using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Core.Advice;

/// <summary>One program judged on one morning.</summary>
/// <param name="Advisor">Who judged it.</param>
/// <param name="Case">What it needs.</param>
/// <param name="Box">All programs that share its percentage, itself among them.</param>
/// <param name="Decision">What was decided.</param>
internal sealed record Judged(ProgramAdvisor Advisor, ProgramCase Case, IReadOnlyList<ProgramCase> Box, Decision Decision)
{
    /// <summary>The same as if some rain had fallen besides.</summary>
    public Judged Supposing(SupposedRain rain) => Advisor.Supposing(Case, rain);

    public bool IsOff => Case.Present.Setting.IsOff;

    /// <summary>The program that the number was made for: of those that share it, the one that needs most; null where no need was computed.</summary>
    public ProgramCase? Leader => Box.Where(c => c.Need is not null && (c.IsOwn || ReferenceEquals(c, Case)))
        .OrderByDescending(c => c.Need!.ExactPercent).ThenByDescending(c => ReferenceEquals(c, Case)).FirstOrDefault();
}

/// <summary>
/// A program of which nobody said whether an earlier sheet's changes were made, judged both ways: as logged, and as if they were made.
/// The drier of the two decides whether it must be turned on again, the wetter whether it can be left out and what the number is: too
/// much water does more harm than too little, and the hose corrects that. It is not left out where the ground is past its allowable depletion already if
/// the sheets were carried out: only those who carry them out leave it out.
/// </summary>
internal sealed record OpenQuestion(IReadOnlyList<OpenLine> Lines, Judged AsLogged, Judged IfDone)
{
    public OpenLine Newest => Lines[^1];

    /// <summary>It may be running, whichever way it was.</summary>
    public bool MayBeOn => !AsLogged.IsOff || !IfDone.IsOff;

    /// <summary>The decision, and the way of judging that it rests on.</summary>
    public (Judged Rests, Decision Decision) Decide(AdviceContext context)
    {
        if (AsLogged is { Case.GrowIn: not null, Decision.Advice: AdviceKind.Leave } && IfDone.Decision.Advice == AdviceKind.Resume)
        {
            // New turf that a sheet may have switched off.
            return (IfDone, IfDone.Decision with { Cause = Cause.MayHaveBeenTurnedOff });
        }

        if (AsLogged.Case.Need is not { } logged || IfDone.Case.Need is not { } done || AsLogged.Decision.Advice is AdviceKind.Off or AdviceKind.AsSet || AsLogged.Case.Fault is not null)
        {
            return (AsLogged, AsLogged.Decision);
        }

        // It may be off, and its ground would then need water: silence would leave it off for good.
        foreach (var judged in new[] { AsLogged, IfDone }.Where(j => j.Decision.Advice == AdviceKind.Resume))
        {
            return (judged, judged.Decision with { Percent = Math.Min(Bounded(context, judged.Decision.Percent!.Value), MostWanted), Cause = Cause.MayHaveBeenTurnedOff });
        }

        var (wetter, drier) = done.ExactPercent <= logged.ExactPercent ? (IfDone, AsLogged) : (AsLogged, IfDone);
        var isLeftOut = wetter.Decision.Advice is AdviceKind.Skip or AdviceKind.KeepOff;
        if (isLeftOut && AsLogged.Decision is { Advice: AdviceKind.Leave, Cause: Cause.AssumedSoil })
        {
            // Nothing is left out on ground whose moisture is only assumed; it may have been turned off since.
            return (AsLogged, IfDone.IsOff ? AsLogged.Decision with { Advice = AdviceKind.Resume, Percent = AsLogged.Case.Present.Setting.Percent } : AsLogged.Decision);
        }

        if (isLeftOut && !(ReferenceEquals(drier, IfDone) && drier.Case.Need!.IsPastAllowable))
        {
            return (wetter, wetter.Decision with { Advice = MayBeOn ? AdviceKind.Skip : AdviceKind.KeepOff });
        }

        if (AsLogged.Decision.Advice == AdviceKind.Leave && IfDone.Decision.Advice == AdviceKind.Leave)
        {
            return (AsLogged, AsLogged.Decision);
        }

        if (isLeftOut)
        {
            // Who carries out what the sheets say has the drier ground: leaving it out again would dry it on for good.
            return (drier, drier.Decision with { Advice = AdviceKind.Set, Percent = Math.Min(Bounded(context, Wanted(drier)), MostWanted), Cause = Cause.StaysNear, IsIfDone = true });
        }

        var near = Bounded(context, Wanted(wetter));
        var number = Math.Min(near, MostWanted);
        var cause = number == Newest.Line.Percent ? Cause.AskedAgain
            : wetter.Decision.Advice == AdviceKind.Set && number == Wanted(wetter) ? wetter.Decision.Cause
            : number < near ? Cause.NoMoreEitherWay
            : Cause.StaysNear;
        // By the logbook it is off for a noted reason: whatever its number, nobody turns it on without asking about that.
        return (wetter, wetter.Decision with { Advice = AsLogged.Case.Noted is null ? AdviceKind.Set : AdviceKind.Resume, Percent = number, Cause = cause, IsIfDone = ReferenceEquals(wetter, IfDone) });
    }

    /// <summary>What neither way of judging asks more than: staying near an earlier number is no reason to water more than that.</summary>
    internal double MostWanted => Math.Max(Wanted(AsLogged), Wanted(IfDone));

    /// <summary>What one way of judging asks, on the dial; 0 = nothing.</summary>
    internal static double Wanted(Judged judged) => judged.Decision.Advice switch
    {
        AdviceKind.Set or AdviceKind.Resume => judged.Decision.Percent!.Value,
        AdviceKind.Leave => judged.Case.Present.Setting.Percent,
        _ => 0,
    };

    /// <summary>A number moves no further from the one last advised than a step of the dial a day, and never above a ceiling of the place.</summary>
    private double Bounded(AdviceContext context, double wanted)
    {
        var (last, far) = Reach(context);
        var number = DialNumber.Nearest(AsLogged.Case.Program.Controller, Math.Clamp(wanted, last - far, last + far));
        var ceiling = Prohibitions.Ceiling(context, AsLogged.Case.Program, AsLogged.Case.Horizon);
        return ceiling is { } c && number > c.Percent ? DialNumber.AtMost(AsLogged.Case.Program.Controller, c.Percent) : number;
    }

    /// <summary>The number last advised, before the night cut it (else the last at which it ran), and how far from it today's may be: what that night lacked binds no other.</summary>
    internal (double Last, double Far) Reach(AdviceContext context)
    {
        var said = Lines.LastOrDefault(l => l.Line.Percent is > 0);
        var last = said?.Line.UncutPercent ?? said?.Line.Percent ?? context.Settings.LastRunning(AsLogged.Case.Program.Key, context.AsOf).Percent;
        return (last, AsLogged.Case.Program.Controller.PercentStep * (context.Date.DayNumber - (said ?? Lines[0]).Sheet.DayNumber));
    }
}
