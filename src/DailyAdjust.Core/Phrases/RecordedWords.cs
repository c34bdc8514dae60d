using System.Text.RegularExpressions;

namespace DailyAdjust.Core.Phrases;

/// <summary>Words that a record holds in English, as a phrase: each figure, and each name in quotation marks, stands in a hole, so that "2 h interpolated" is said in any language that knows "{0} h interpolated".</summary>
public static partial class RecordedWords
{
    public static Phrase Of(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var phrase = new Phrase("");
        var at = 0;
        foreach (var figure in Figure().EnumerateMatches(words))
        {
            phrase.AppendLiteral(words[at..figure.Index]);
            phrase.AppendFormatted(words.Substring(figure.Index, figure.Length));
            at = figure.Index + figure.Length;
        }

        phrase.AppendLiteral(words[at..]);
        return phrase;
    }

    /// <summary>What is said of a quantity: "wind_speed: 2 h interpolated".</summary>
    public static Phrase OfQuantity(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return words.IndexOf(": ", StringComparison.Ordinal) is var colon and > 0
            ? $"{Quantity(words[..colon])}: {Of(words[(colon + 2)..])}"
            : Of(words);
    }

    /// <summary>"wind speed", "reference ET" of the name that files have.</summary>
    public static Phrase Quantity(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return new(name.Replace('_', ' ').Replace(" et", " ET", StringComparison.Ordinal));
    }

    [GeneratedRegex("\"[^\"]*\"((, | / )\"[^\"]*\")*|(?<![A-Za-z0-9])-?[0-9]+(\\.[0-9]+)?", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Figure();
}
