namespace DailyAdjust.Files;

/// <summary>Collects what is wrong with one file, so that all of it is told at once.</summary>
internal sealed class ProblemList(string file)
{
    private readonly List<Problem> _found = [];

    public int Count => _found.Count;

    public bool HasErrors => _found.Exists(p => p.Severity == Severity.Error);

    public void Error(int line, int column, string what, string hint = "") => _found.Add(new(file, line, column, what, hint));

    public void Warn(int line, int column, string what, string hint = "") => _found.Add(new(file, line, column, what, hint, Severity.Warning));

    /// <summary>By line and column; problems of one place stay in the order in which they were found.</summary>
    public IReadOnlyList<Problem> InOrder() => [.. _found.OrderBy(p => p.Line).ThenBy(p => p.Column)];
}
