using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>A list of twelve values, January first.</summary>
internal static class MonthlyValues
{
    private static readonly string[] Months =
        ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"];

    public static IReadOnlyList<double> Read(YamlNode node, string what, ProblemList problems, Func<YamlNode, string, double?> value)
    {
        var items = Values.Items(node);
        if (node is not YamlList || items.Count != 12)
        {
            problems.Error(node.Line, node.Column, FormattableString.Invariant($"{what} has {items.Count} value(s) instead of 12"), "write one for every month, January first: [0.80, 0.80, ...]");
        }

        return [.. items.Select((item, i) => value(item, $"{what}, {(i < 12 ? Months[i] : "one too many")}") ?? 0)];
    }
}
