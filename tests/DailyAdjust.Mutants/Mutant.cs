using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Text;

namespace DailyAdjust.Mutants;

/// <summary>One fault: a piece of a file's text, and what stands there instead.</summary>
/// <param name="Tree">The file.</param>
/// <param name="Span">Where.</param>
/// <param name="Text">Instead.</param>
/// <param name="Was">The expression around it as it is.</param>
/// <param name="Becomes">And as it would be.</param>
internal sealed record Mutant(SyntaxTree Tree, TextSpan Span, string Text, string Was, string Becomes)
{
    /// <summary>Path below Core: "Advice/Decision.cs".</summary>
    public string File => Tree.FilePath;

    public string Folder => File.Split('/')[0];

    public int Line => Tree.GetLineSpan(Span).StartLinePosition.Line + 1;

    /// <summary>"Advice/Decision.cs:12: a &lt; b -> a &lt;= b".</summary>
    public override string ToString() => FormattableString.Invariant($"{File}:{Line}: {Was} -> {Becomes}");
}
