using System.Text.RegularExpressions;

namespace DailyAdjust.Files.Guess;

/// <summary>How a column writes dates: the patterns that can be meant, one where year, month and day are told apart by their form.</summary>
/// <param name="Patterns">.NET patterns.</param>
/// <param name="Length">Characters of a text that the date takes.</param>
internal sealed record DateForm(IReadOnlyList<string> Patterns, Func<string, int> Length)
{
    private const RegexOptions Plainly = RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking;

    private static readonly Regex YearFirst = new(@"^(?<a>\d{4})(?<s>[-/.])(?<b>\d{1,2})[-/.](?<c>\d{1,2})", Plainly);
    private static readonly Regex Short = new(@"^(?<a>\d{1,2})(?<s>[-/.])(?<b>\d{1,2})[-/.](?<c>\d{4}|\d{2})", Plainly);
    private static readonly Regex Together = new(@"^(?<a>(19|20|21)\d\d)(?<b>(0\d|1[0-2]))(?<c>[0-3]\d)", Plainly);
    private static readonly Regex NamedMonth = new(@"^(?<a>\d{1,2})(?<s>[- /.])(?<b>[A-Za-z]{3,9})[- /.](?<c>\d{4}|\d{2})", Plainly);
    private static readonly Regex MonthFirst = new(@"^(?<b>[A-Za-z]{3,9}) (?<a>\d{1,2})(?<s>,?) (?<c>\d{4})", Plainly);

    /// <summary>The form of most of the texts; null = they are no dates.</summary>
    public static DateForm? Of(IReadOnlyList<string> texts)
    {
        foreach (var form in new[] { YearFirst, Short, Together, NamedMonth, MonthFirst })
        {
            var matches = texts.Select(text => form.Match(text)).Where(match => match.Success).ToList();
            if (matches.Count > 0 && matches.Count >= 0.8 * texts.Count)
            {
                return new(PatternsOf(form, matches), text => form.Match(text) is { Success: true } match ? match.Length : 0);
            }
        }

        return null;
    }

    private static string[] PatternsOf(Regex form, List<Match> matches)
    {
        var sign = matches[0].Groups["s"].Value;
        var (a, b, c) = (Texts(matches, "a"), Texts(matches, "b"), Texts(matches, "c"));
        if (ReferenceEquals(form, Together))
        {
            return ["yyyyMMdd"];
        }

        if (ReferenceEquals(form, YearFirst))
        {
            return [$"yyyy{sign}{Letters('M', b)}{sign}{Letters('d', c)}"];
        }

        var year = c.Exists(text => text.Length == 4) ? "yyyy" : "yy";
        if (ReferenceEquals(form, NamedMonth))
        {
            return [$"{Letters('d', a)}{sign}{MonthLetters(b)}{sign}{year}"];
        }

        if (ReferenceEquals(form, MonthFirst))
        {
            return [$"{MonthLetters(b)} {Letters('d', a)}{sign} {year}"];
        }

        // Points part day and month in the countries that write them so; with / and - both orders are in use.
        string[] orders = [$"{Letters('M', a)}{sign}{Letters('d', b)}{sign}{year}", $"{Letters('d', a)}{sign}{Letters('M', b)}{sign}{year}"];
        return year.Length == 2 ? [.. orders, $"yy{sign}{Letters('M', b)}{sign}{Letters('d', c)}"] : orders;
    }

    /// <summary>Two letters mean two digits, one letter one or two: only where a zero leads are two always written.</summary>
    public static string Letters(char letter, IReadOnlyList<string> texts) =>
        texts.All(text => text.Length == 2) && texts.Any(text => text[0] == '0') ? new string(letter, 2) : letter.ToString();

    private static string MonthLetters(List<string> texts) => texts.TrueForAll(text => text.Length == 3) ? "MMM" : "MMMM";

    private static List<string> Texts(List<Match> matches, string group) => matches.ConvertAll(match => match.Groups[group].Value);
}
