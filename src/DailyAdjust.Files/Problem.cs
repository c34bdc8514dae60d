namespace DailyAdjust.Files;

public enum Severity
{
    /// <summary>Must be put right before the file, or the row, is used.</summary>
    Error,

    /// <summary>Is used as it stands; somebody should look at it.</summary>
    Warning,
}

/// <summary>Something wrong in a file from outside: where, what, and what to do about it.</summary>
/// <param name="File">The file's name.</param>
/// <param name="Line">From 1.</param>
/// <param name="Column">From 1: the character in the line (YAML), or the cell in the row (CSV).</param>
/// <param name="What">What is wrong, without a full stop.</param>
/// <param name="Hint">What to do, without a full stop; may be empty.</param>
/// <param name="Severity">Whether the file or row can be used.</param>
public sealed record Problem(string File, int Line, int Column, string What, string Hint, Severity Severity = Severity.Error)
{
    /// <summary>The hint with its full stop; one that asks has its question mark.</summary>
    public string HintEnded => Hint.Length == 0 || Hint[^1] is '?' or '.' ? Hint : Hint + ".";

    /// <summary>One line: "file:line:column: what. hint".</summary>
    public override string ToString()
    {
        var line = FormattableString.Invariant($"{File}:{Line}:{Column}: {What}.");
        line = Hint.Length == 0 ? line : line + " " + HintEnded;
        return string.Concat(line.Select(c => char.IsControl(c) ? ' ' : c));
    }
}
