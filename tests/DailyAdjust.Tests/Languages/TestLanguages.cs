using System.Net;
using System.Text.RegularExpressions;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Tests.Languages;

/// <summary>Languages that show what a report says by phrases and what slips by.</summary>
public static partial class TestLanguages
{
    /// <summary>English that notes every template it is asked for.</summary>
    public static Language Noting(ISet<string> met) => new("en", template =>
    {
        met.Add(template);
        return template;
    });

    /// <summary>English with brackets around every piece of a template; what stands in the holes has none.</summary>
    public static Language Bracketed { get; } = new("xx", template => Piece().Replace(template, "⟦$0⟧"));

    /// <summary>Units, and names of files and of the logbook's places: the same in every language.</summary>
    public static IReadOnlyList<string> NoWords { get; } = ["gal", "gpm", "mph", "mm", "min", "L/min", "area:", "round.csv", "report.html"];

    /// <summary>There is something to translate.</summary>
    public static bool HasWords(string template) => template.Length > 0 && Word().IsMatch(Hole().Replace(template, ""));

    public static IReadOnlyList<string> Holes(string template) => [.. Hole().Matches(template).Select(m => m.Value).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>What a page or a text in <see cref="Bracketed"/> says outside of brackets, without commands and style, and without the given names.</summary>
    public static IReadOnlyList<string> Outside(string report, IEnumerable<string> names)
    {
        var isPage = report.StartsWith("<!doctype", StringComparison.Ordinal);
        var text = isPage ? WebUtility.HtmlDecode(Tag().Replace(Label().Replace(Style().Replace(report, " "), " ${said} "), "\n")) : report;

        // A line may be folded inside of brackets, and inside of a name.
        text = Cut().Replace(Bracket().Replace(Blank().Replace(text, " "), "¦"), "¦");
        text = Command().Replace(text.Replace("¦", " ", StringComparison.Ordinal), " ");
        foreach (var name in names.Distinct(StringComparer.Ordinal).OrderByDescending(n => n.Length))
        {
            text = text.Replace(name, " ", StringComparison.OrdinalIgnoreCase);
        }

        return [.. Word().Matches(text).Select(m => m.Value)];
    }

    [GeneratedRegex("\\{[0-9]+\\}", RegexOptions.None, 1000)]
    private static partial Regex Hole();

    [GeneratedRegex("(?<=^|\\})[^{}]+(?=\\{|$)", RegexOptions.None, 1000)]
    private static partial Regex Piece();

    [GeneratedRegex("[A-Za-z]{2,}", RegexOptions.None, 1000)]
    private static partial Regex Word();

    /// <summary>With its end, or broken off.</summary>
    [GeneratedRegex("⟦[^⟧]*?(⟧|\\.\\.\\.)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Bracket();

    /// <summary>A name or number that was broken off.</summary>
    [GeneratedRegex("[^¦]*\\.\\.\\.", RegexOptions.None, 1000)]
    private static partial Regex Cut();

    [GeneratedRegex("<style>.*?</style>|<code>.*?</code>|<!doctype html>", RegexOptions.Singleline, 1000)]
    private static partial Regex Style();

    /// <summary>What is typed, where no mark shows it: a command, a line of the logbook.</summary>
    [GeneratedRegex("dailyadjust log .*? --site (\"[^\"]*\"|'[^']*'|\\S+)|[0-9]{4}-[0-9]{2}-[0-9]{2}[ 0-9:_]*,[a-z]+,(\"[^\"]*\")?\\S*", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Command();

    [GeneratedRegex("aria-label=\"(?<said>[^\"]*)\"[^>]*>", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Label();

    [GeneratedRegex("[\\s\u00A0]+", RegexOptions.None, 1000)]
    private static partial Regex Blank();

    [GeneratedRegex("<[^>]*>", RegexOptions.None, 1000)]
    private static partial Regex Tag();
}
