using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>A start and what it asks while something does not fit: of the pump, L/min; of the window, 1 for being on after its closing.</summary>
internal readonly record struct StartAsking(ProgramKey Program, DateTimeOffset Start, double Asks);

/// <summary>Something of a night that does not fit and that smaller numbers could mend.</summary>
/// <param name="IsWindow">A run is on after the window's closing; else the pump is asked for too much.</param>
/// <param name="Asking">What is on; for the window one run.</param>
/// <param name="Gives">The pump's capacity, L/min; of the window 0.</param>
/// <param name="Minutes">How long.</param>
/// <param name="From">Since when: the window's closing, or when the pump is first asked for too much, UTC.</param>
internal sealed record NightTrouble(bool IsWindow, IReadOnlyList<StartAsking> Asking, double Gives, double Minutes, DateTimeOffset From)
{
    private const double Tolerance = 1e-9;

    /// <summary>Whether some of what is on would be too much by itself.</summary>
    public bool IsTooMuch(Func<ProgramKey, bool> some)
    {
        var sum = 0.0;
        foreach (var start in Asking)
        {
            sum += some(start.Program) ? start.Asks : 0;
        }

        return sum > Gives + Tolerance;
    }

    /// <summary>Whether the starts that it shares with another trouble are too much by themselves in both: then the others have no part in it.</summary>
    /// <param name="other">That trouble.</param>
    /// <param name="some">Programs that are looked at.</param>
    /// <param name="with">One of these has to be among those starts.</param>
    public bool IsOf(NightTrouble other, Func<ProgramKey, bool> some, Func<ProgramKey, bool> with)
    {
        var isWith = false;
        if (IsWindow != other.IsWindow)
        {
            return false;
        }

        double here = 0, there = 0;
        foreach (var start in Asking.Where(a => some(a.Program)))
        {
            foreach (var same in other.Asking.Where(o => o.Program == start.Program && o.Start == start.Start))
            {
                isWith |= with(start.Program);
                here += start.Asks;
                there += same.Asks;
            }
        }

        return isWith && here > Gives + Tolerance && there > other.Gives + Tolerance;
    }
}
