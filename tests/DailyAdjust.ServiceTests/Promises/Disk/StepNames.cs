namespace DailyAdjust.ServiceTests.Promises.Disk;

/// <summary>What the program was at, step by step, in the words of the morning's work: read from the log of one undisturbed run.</summary>
internal static class StepNames
{
    /// <param name="log">Lines "number call path", in order.</param>
    /// <returns>A name per line; empty = before the work begins (opening, tables).</returns>
    public static IReadOnlyList<string> Of(IReadOnlyList<string> log)
    {
        var steps = log.Select(line => line.Split(' ', 3)).Select(parts => (Call: parts[1], Path: parts[2])).ToList();
        var firstRead = steps.FindIndex(s => s.Call is "read");
        var lastPutAway = steps.FindLastIndex(s => IsPutAway(s.Call, s.Path));
        var firstReport = steps.FindIndex(s => s.Path.Contains("/reports/", StringComparison.Ordinal));
        var lastReport = steps.FindLastIndex(s => s.Call is "rename" && s.Path.Contains("/reports/", StringComparison.Ordinal));

        // Begun and computed are kept in a commit each; what is kept before them are the days that were closed.
        var commits = Enumerable.Range(0, steps.Count).Where(i => i > lastPutAway && i < firstReport && steps[i] is ("sync", var path) && path.EndsWith("-wal", StringComparison.Ordinal)).ToList();
        var closed = commits.Count > 2 ? commits[^3] : lastPutAway;
        return [.. steps.Select((s, i) => Name(s.Call, s.Path, i))];

        string Name(string call, string path, int i) =>
            call is "send" ? "mail"
            : call is "read" ? "reading a file"
            : path.Contains("/inbox/", StringComparison.Ordinal) ? "putting a file away"
            : path.Contains("/reports/", StringComparison.Ordinal) ? "report file " + Whole(Path.GetFileName(path))
            : path.Contains("/summaries", StringComparison.Ordinal) ? "the week's books"
            : path.EndsWith("index.html", StringComparison.Ordinal) || path.StartsWith(".index", StringComparison.Ordinal) ? "the page over all sites"
            : !path.Contains("/ledger.db", StringComparison.Ordinal) || i < firstRead ? ""
            : firstReport < 0 || i < lastPutAway ? "committing what came in"
            : i <= closed ? "closing days"
            : i < firstReport ? "recording the sheet"
            : i > lastReport ? "recording what became of it" : "";
    }

    private static bool IsPutAway(string call, string path) => call is "rename" && path.Contains("/inbox/", StringComparison.Ordinal);

    /// <summary>".report.html.123.tmp" is report.html on its way.</summary>
    private static string Whole(string name) => name.StartsWith('.') ? string.Join('.', name[1..].Split('.')[..^2]) : name;
}
