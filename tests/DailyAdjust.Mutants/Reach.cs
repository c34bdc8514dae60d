using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace DailyAdjust.Mutants;

/// <summary>
/// Core with a note at the beginning of each of its members, so that a run of tests tells which members it came to. What stands in no member's body (a constant, a field) is
/// reached by whoever asks: it has no number.
/// </summary>
internal sealed class Reach
{
    /// <summary>The file that a run of tests writes the numbers of its members into.</summary>
    public const string Variable = "DAILYADJUST_REACH";

    private readonly Dictionary<(string File, int Begin), int> _numbers = [];

    public Reach(CoreSource source)
    {
        var files = source.Files.Select(file => (file, Text: Noted(file))).ToList();
        Assembly = source.Compile(files, Recorder(_numbers.Count)) ?? throw new InvalidOperationException("Core with notes in it does not compile.");
    }

    public byte[] Assembly { get; }

    /// <summary>The member that a fault lies in; null = in none.</summary>
    public int? Of(Mutant mutant)
    {
        var node = mutant.Tree.GetRoot().FindNode(mutant.Span);
        var body = node.AncestorsAndSelf().LastOrDefault(n => IsBody(n) && n.Span.Contains(mutant.Span));
        return body is not null && _numbers.TryGetValue((mutant.File, body.SpanStart), out var number) ? number : null;
    }

    /// <summary>A member's body as a block, or after an arrow; those of lambdas and local functions lie within one.</summary>
    private static bool IsBody(SyntaxNode node) => node switch
    {
        BlockSyntax { Parent: BaseMethodDeclarationSyntax or AccessorDeclarationSyntax } => true,
        ArrowExpressionClauseSyntax { Parent: MethodDeclarationSyntax method } => method.ReturnType is not RefTypeSyntax,
        ArrowExpressionClauseSyntax { Parent: PropertyDeclarationSyntax or IndexerDeclarationSyntax or OperatorDeclarationSyntax or ConversionOperatorDeclarationSyntax } => true,
        _ => false,
    };

    private string Noted(SyntaxTree file)
    {
        var text = file.ToString();
        foreach (var body in file.GetRoot().DescendantNodes().Where(IsBody).OrderByDescending(node => node.SpanStart))
        {
            var number = _numbers.Count;
            var note = FormattableString.Invariant($"global::DailyAdjust.Core.ReachOfTests.Hit({number});");
            if (body is BlockSyntax)
            {
                text = text.Insert(body.SpanStart + 1, note);
            }
            else if (body is ArrowExpressionClauseSyntax { Expression: not ThrowExpressionSyntax } arrow)
            {
                // Behind the expression stands the semicolon of its member.
                var isVoid = arrow.Parent is MethodDeclarationSyntax { ReturnType: PredefinedTypeSyntax { Keyword.RawKind: (int)SyntaxKind.VoidKeyword } };
                var statement = note + (isVoid ? "" : "return ") + arrow.Expression + ";";
                var block = arrow.Parent is PropertyDeclarationSyntax or IndexerDeclarationSyntax ? "{ get { " + statement + " } }" : "{ " + statement + " }";
                var end = text.IndexOf(';', arrow.Span.End);
                text = text.Remove(arrow.SpanStart, end + 1 - arrow.SpanStart).Insert(arrow.SpanStart, block);
            }
            else
            {
                continue;
            }

            _numbers[(file.FilePath, body.SpanStart)] = number;
        }

        return text;
    }

    private static string Recorder(int members) => $$"""
        namespace DailyAdjust.Core;
        public static class ReachOfTests
        {
            private static readonly bool[] Hits = new bool[{{members}}];
            static ReachOfTests() => System.AppDomain.CurrentDomain.ProcessExit += (_, _) => Write();
            public static void Hit(int member) => Hits[member] = true;
            private static void Write()
            {
                if (System.Environment.GetEnvironmentVariable("{{Variable}}") is { } path)
                {
                    System.IO.File.WriteAllLines(path, System.Linq.Enumerable.Select(System.Linq.Enumerable.Where(System.Linq.Enumerable.Range(0, Hits.Length), i => Hits[i]), i => i.ToString(System.Globalization.CultureInfo.InvariantCulture)));
                }
            }
        }
        """;
}
