using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace DailyAdjust.Mutants;

/// <summary>The faults that a file could have: operators, constants and conditions.</summary>
internal static class Mutations
{
    private const int Shown = 90;

    private static readonly Dictionary<SyntaxKind, string[]> Operators = new()
    {
        [SyntaxKind.PlusToken] = ["-"],
        [SyntaxKind.MinusToken] = ["+"],
        [SyntaxKind.AsteriskToken] = ["/"],
        [SyntaxKind.SlashToken] = ["*"],
        [SyntaxKind.PercentToken] = ["*"],
        [SyntaxKind.LessThanToken] = ["<=", ">="],
        [SyntaxKind.LessThanEqualsToken] = ["<", ">"],
        [SyntaxKind.GreaterThanToken] = [">=", "<="],
        [SyntaxKind.GreaterThanEqualsToken] = [">", "<"],
        [SyntaxKind.EqualsEqualsToken] = ["!="],
        [SyntaxKind.ExclamationEqualsToken] = ["=="],
        [SyntaxKind.AmpersandAmpersandToken] = ["||"],
        [SyntaxKind.BarBarToken] = ["&&"],
        [SyntaxKind.PlusEqualsToken] = ["-="],
        [SyntaxKind.MinusEqualsToken] = ["+="],
        [SyntaxKind.AsteriskEqualsToken] = ["/="],
    };

    private static readonly Dictionary<string, string> Names = new(StringComparer.Ordinal)
    {
        ["Min"] = "Max",
        ["Max"] = "Min",
        ["Any"] = "All",
        ["All"] = "Any",
        ["Floor"] = "Ceiling",
        ["Ceiling"] = "Floor",
        ["OrderBy"] = "OrderByDescending",
        ["OrderByDescending"] = "OrderBy",
    };

    public static IEnumerable<Mutant> In(SyntaxTree tree) => tree.GetRoot().DescendantNodes(node => node is not AttributeListSyntax).SelectMany(node => Of(tree, node));

    private static IEnumerable<Mutant> Of(SyntaxTree tree, SyntaxNode node) => node switch
    {
        BinaryExpressionSyntax binary => Swaps(tree, binary, binary.OperatorToken),
        AssignmentExpressionSyntax assignment => Swaps(tree, assignment, assignment.OperatorToken),
        RelationalPatternSyntax relational => Swaps(tree, relational, relational.OperatorToken),
        BinaryPatternSyntax pattern => [Token(tree, pattern, pattern.OperatorToken, pattern.OperatorToken.IsKind(SyntaxKind.OrKeyword) ? "and" : "or")],
        PrefixUnaryExpressionSyntax { RawKind: (int)SyntaxKind.LogicalNotExpression or (int)SyntaxKind.UnaryMinusExpression } unary => [Token(tree, unary, unary.OperatorToken, "")],
        IfStatementSyntax condition => [Negation(tree, condition.Condition)],
        ConditionalExpressionSyntax conditional => [Negation(tree, conditional.Condition)],
        LiteralExpressionSyntax literal => Constants(tree, literal),
        MemberAccessExpressionSyntax { Parent: InvocationExpressionSyntax, Name.Identifier: var name } access when Names.TryGetValue(name.Text, out var other) => [Token(tree, access, name, other)],
        _ => [],
    };

    private static IEnumerable<Mutant> Swaps(SyntaxTree tree, SyntaxNode around, SyntaxToken sign) =>
        Operators.TryGetValue(sign.Kind(), out var others) ? others.Select(other => Token(tree, around, sign, other)) : [];

    private static Mutant Negation(SyntaxTree tree, ExpressionSyntax condition) =>
        new(tree, condition.Span, $"!({condition})", Short(condition.ToString()), Short($"!({condition})"));

    /// <summary>A whole number one more, any other half as much again, and 0 becomes 1; true becomes false.</summary>
    private static IEnumerable<Mutant> Constants(SyntaxTree tree, LiteralExpressionSyntax literal)
    {
        var other = literal.Token.Value switch
        {
            int number => (number + 1).ToString(CultureInfo.InvariantCulture),
            double number => (number == 0 ? 1 : 1.5 * number).ToString("0.0###############", CultureInfo.InvariantCulture),
            bool truth => truth ? "false" : "true",
            _ => null,
        };
        return other is null ? [] : [Token(tree, literal.Parent ?? literal, literal.Token, other)];
    }

    private static Mutant Token(SyntaxTree tree, SyntaxNode around, SyntaxToken token, string other)
    {
        var text = around.ToString();
        var at = token.SpanStart - around.SpanStart;
        return new(tree, new TextSpan(token.SpanStart, token.Span.Length), other, Short(text, at), Short(text.Remove(at, token.Span.Length).Insert(at, other), at));
    }

    /// <summary>One line, cut around the place where it is long.</summary>
    private static string Short(string text, int at = 0)
    {
        var from = Math.Max(0, Math.Min(at - (Shown / 2), text.Length - Shown));
        var piece = text.Substring(from, Math.Min(Shown, text.Length - from));
        return string.Join(' ', piece.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }
}
