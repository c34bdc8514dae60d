using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>
/// What no number mends: starts that are in each other's way, or past the window's closing, with the smallest numbers already. Nothing is cut for it.
/// </summary>
internal sealed class LastingTroubles
{
    private readonly Dictionary<(ProgramKey Program, DateTimeOffset Start), List<NightTrouble>> _byStart = [];
    private readonly Dictionary<string, bool> _known = new(StringComparer.Ordinal);

    /// <param name="troubles">Of the nights with the smallest numbers.</param>
    public LastingTroubles(IEnumerable<NightTrouble> troubles)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var trouble in troubles.Where(t => seen.Add(TextOf(t, _ => true))))
        {
            foreach (var start in trouble.Asking)
            {
                if (!_byStart.TryGetValue((start.Program, start.Start), out var list))
                {
                    _byStart[(start.Program, start.Start)] = list = [];
                }

                list.Add(trouble);
            }
        }
    }

    /// <summary>Whether a trouble among some programs is one of them, or has one of them in it.</summary>
    public bool Has(NightTrouble trouble, Func<ProgramKey, bool> some)
    {
        // The same nights are laid out many times, and differ in one dial.
        var text = TextOf(trouble, some);
        if (!_known.TryGetValue(text, out var has))
        {
            _known[text] = has = trouble.Asking
                .Where(a => some(a.Program))
                .SelectMany(a => _byStart.TryGetValue((a.Program, a.Start), out var list) ? list : [])
                .Distinct()
                .Any(t => trouble.IsOf(t, some));
        }

        return has;
    }

    private static string TextOf(NightTrouble trouble, Func<ProgramKey, bool> some) =>
        FormattableString.Invariant($"{trouble.IsWindow} {trouble.Gives} ") + string.Join(' ', trouble.Asking.Where(a => some(a.Program)).Select(a => FormattableString.Invariant($"{a.Program} {a.Start.UtcTicks} {a.Asks}")));
}
