using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>
/// What of a long logbook still has a say from an instant on. Whoever looks no further back needs of every program what was said since, and before that up to the last number that somebody
/// put on it: whatever is older lies under that number, and answers no sheet that the number does not answer too.
/// </summary>
internal static class NeededWords
{
    /// <summary>Those that are needed, in order of arrival.</summary>
    /// <param name="words">In order of arrival.</param>
    /// <param name="versions">Of the site.</param>
    /// <param name="from">The first instant that is asked about, UTC.</param>
    public static IReadOnlyList<DialWord> From(IReadOnlyList<DialWord> words, IReadOnlyList<SiteVersion> versions, DateTimeOffset from)
    {
        var (open, covered) = (ProgramsFrom(versions, from), new CoveredPrograms(versions));
        var needed = new bool[words.Count];
        var numbersSaid = DateTimeOffset.MaxValue;
        foreach (var i in Enumerable.Range(0, words.Count).OrderByDescending(i => words[i].From).ThenByDescending(i => i))
        {
            var word = words[i];
            needed[i] = word.Said >= from || open.Count > 0 || word.Said > numbersSaid;
            if (word.From < from && open.Count > 0 && open.RemoveWhere(NumbersOf(word, versions, covered).ToHashSet().Contains) > 0 && word.Said < numbersSaid)
            {
                numbersSaid = word.Said;
            }
        }

        return [.. words.Where((_, i) => needed[i])];
    }

    /// <summary>Those of the versions that are in force then or later: the ones that no next one has followed yet.</summary>
    private static HashSet<ProgramKey> ProgramsFrom(IReadOnlyList<SiteVersion> versions, DateTimeOffset from)
    {
        var date = versions[^1].Site.Clock.DateOf(from);
        return [.. new CoveredPrograms([.. versions.Where((_, i) => i == versions.Count - 1 || versions[i + 1].From > date)]).All];
    }

    /// <summary>The programs that got a number by it, and run with it until somebody says otherwise.</summary>
    private static IEnumerable<ProgramKey> NumbersOf(DialWord word, IReadOnlyList<SiteVersion> versions, CoveredPrograms covered) => word.Entry switch
    {
        { Kind: LogKind.Setting, Value: > 0 } entry => covered.By(entry.Where).Where(p => !ImpossibleSettings.Is(entry, p, versions)),
        { Kind: LogKind.Round } entry => word.Sheet!.Lines.Where(l => l is { Asks: true, Percent: > 0, PauseDays: null } && !entry.Except.Any(e => e.Covers(l.Program))).Select(l => l.Program),
        _ => [],
    };
}
