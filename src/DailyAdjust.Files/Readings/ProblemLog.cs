namespace DailyAdjust.Files.Readings;

/// <summary>The problems of one file. A bad file of any size keeps no more than a few of each sort, and says how many more there were.</summary>
internal sealed class ProblemLog(string file)
{
    private const int KeptOfASort = 20;

    private readonly List<Problem> _kept = [];
    private readonly Dictionary<(string Sort, int Column), (int Count, int LastLine)> _sorts = [];

    /// <summary>Problems of earlier lines were told when those were read first.</summary>
    public int FirstLine { get; set; } = 1;

    /// <summary>Notes one problem; the texts are only made while they are kept.</summary>
    /// <param name="sort">What one counts together, in words that end "... more rows: ".</param>
    /// <param name="line">From 1.</param>
    /// <param name="column">The cell, from 1.</param>
    public void Add(string sort, int line, int column, Severity severity, Func<(string What, string Hint)> texts)
    {
        if (line < FirstLine)
        {
            return;
        }

        var (count, _) = _sorts.GetValueOrDefault((sort, column));
        _sorts[(sort, column)] = (count + 1, line);
        if (count < KeptOfASort)
        {
            var (what, hint) = texts();
            _kept.Add(new Problem(file, line, column, what, hint, severity));
        }
    }

    /// <summary>In order of line and column; where more were found than kept, their number stands at the last of them.</summary>
    public IReadOnlyList<Problem> ToList() =>
    [
        .. _kept.Concat(_sorts.Where(sort => sort.Value.Count > KeptOfASort).Select(sort => new Problem(
                file, sort.Value.LastLine, sort.Key.Column, FormattableString.Invariant($"{sort.Value.Count - KeptOfASort} more of these up to this line: {sort.Key.Sort}"), "", Severity.Warning)))
            .OrderBy(problem => problem.Line).ThenBy(problem => problem.Column).ThenBy(problem => problem.What, StringComparer.Ordinal),
    ];
}
