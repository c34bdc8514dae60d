using System.Globalization;
using System.Runtime.CompilerServices;

namespace DailyAdjust.Core.Phrases;

/// <summary>
/// Words for people that can be said in more than one language: an English sentence with numbered holes ("station {0}: {1}"), which is also its key in a translator's
/// catalogue, and what stands in the holes. The compiler makes it of an interpolated string wherever a phrase is wanted. What is text in a hole (names, notes, numbers, commands)
/// is the same in every language; a phrase in a hole is said in the language of the whole. Nothing turns text into a phrase by itself, so that no sentence slips through as if it were a name.
/// </summary>
[InterpolatedStringHandler]
public sealed class Phrase : IEquatable<Phrase>
{
    private readonly List<object> _holes = [];
    private Func<string, string>? _shape;
    private bool _hasWords;
    private Said? _said;

    /// <summary>Words without a hole.</summary>
    public Phrase(string words) => AppendLiteral(words);

    /// <summary>For the compiler, which goes on with the parts of the interpolated string.</summary>
    public Phrase(int literalLength, int formattedCount)
    {
    }

    public static Phrase Empty { get; } = new("");

    /// <summary>The English sentence, holes as {0}, {1}, ...; braces that are meant are doubled.</summary>
    public string Template { get; private set; } = "";

    public bool IsEmpty => !_hasWords && _holes.TrueForAll(hole => hole is Phrase phrase ? phrase.IsEmpty : hole is "");

    /// <summary>Text that is the same in every language: a name, a note, a code.</summary>
    public static Phrase Verbatim(string text) => $"{text}";

    /// <summary>The same: helps the compiler where it cannot see that a phrase is wanted.</summary>
    public static Phrase Of(Phrase phrase) => phrase;

    /// <summary>All of them, one behind the other.</summary>
    public static Phrase Concat(IEnumerable<Phrase> phrases) => Join("", phrases);

    /// <param name="separator">Signs that every language writes alike: ", " or "; ".</param>
    /// <param name="phrases">None gives the empty phrase.</param>
    public static Phrase Join(string separator, IEnumerable<Phrase> phrases)
    {
        ArgumentNullException.ThrowIfNull(phrases);
        var joined = new Phrase("");
        foreach (var phrase in phrases)
        {
            joined.AppendLiteral(joined._holes.Count > 0 ? separator : "");
            joined.AppendFormatted(phrase);
        }

        return joined;
    }

    /// <summary>Those that say something, with a blank between.</summary>
    public static Phrase Sentences(params Phrase[] phrases) => Join(" ", phrases.Where(p => !p.IsEmpty));

    /// <summary>"1 box", "2 boxes".</summary>
    public static Phrase Count(int count, string one, string many) => Counted(count, count == 1 ? one : many);

    /// <summary>A number and what it counts: "10 June" is the template "{0} June".</summary>
    public static Phrase Counted(int count, string words)
    {
        var counted = new Phrase("");
        counted.AppendFormatted(count);
        counted.AppendLiteral(" " + words);
        return counted;
    }

    /// <summary>"a", "a and b", "a, b and c".</summary>
    public static Phrase List(IReadOnlyList<Phrase> phrases)
    {
        ArgumentNullException.ThrowIfNull(phrases);
        return phrases.Count < 2 ? Join("", phrases) : $"{Join(", ", phrases.Take(phrases.Count - 1))} and {phrases[^1]}";
    }

    /// <summary>The same of names, which are not translated.</summary>
    public static Phrase ListNames(IEnumerable<string> names) => List([.. names.Select(Verbatim)]);

    public static Phrase operator +(Phrase first, Phrase second) => $"{first}{second}";

    /// <summary>For the compiler.</summary>
    public void AppendLiteral(string literal)
    {
        ArgumentNullException.ThrowIfNull(literal);
        _said = null;
        _hasWords |= literal.Length > 0;
        Template += literal.AsSpan().ContainsAny('{', '}') ? literal.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal) : literal;
    }

    /// <summary>For the compiler.</summary>
    public void AppendFormatted(Phrase phrase) => Hole(phrase);

    /// <summary>For the compiler: text is verbatim.</summary>
    public void AppendFormatted(string text) => Hole(text);

    /// <summary>For the compiler: numbers and keys, in the invariant culture.</summary>
    public void AppendFormatted<T>(T value)
        where T : struct => AppendFormatted(value, format: null);

    /// <summary>For the compiler.</summary>
    public void AppendFormatted<T>(T value, string? format)
        where T : struct => Hole(value is IFormattable number ? number.ToString(format, CultureInfo.InvariantCulture) : value.ToString() ?? "");

    /// <summary>The phrase, and what is done to it once it is said: a capital letter, a full stop.</summary>
    /// <param name="shape">Of the words in whatever language; they are never empty.</param>
    public Phrase Shaped(Func<string, string> shape) => IsEmpty ? this : new Phrase("") { Template = "{0}", _shape = shape }.With(this);

    /// <summary>The same phrase with another in place of one that stands in a hole of it, however deep.</summary>
    public Phrase Replace(Phrase part, Phrase by)
    {
        var changed = new Phrase("") { Template = Template, _shape = _shape, _hasWords = _hasWords };
        changed._holes.AddRange(_holes.Select(hole => ReferenceEquals(hole, part) ? by : hole is Phrase phrase ? phrase.Replace(part, by) : hole));
        return changed;
    }

    /// <summary>The phrase in a language.</summary>
    /// <exception cref="FormatException">The language's template has a hole that the English one has not.</exception>
    public string In(Language language)
    {
        ArgumentNullException.ThrowIfNull(language);
        if (_said is { } before && ReferenceEquals(before.Language, language))
        {
            return before.Words;
        }

        var words = Say(language);
        _said = new Said(language, words);
        return words;
    }

    private string Say(Language language)
    {
        if (Template.Length == 0)
        {
            return "";
        }

        var holes = new object[_holes.Count];
        for (var i = 0; i < holes.Length; i++)
        {
            holes[i] = _holes[i] is Phrase phrase ? phrase.In(language) : _holes[i];
        }

        var said = string.Format(CultureInfo.InvariantCulture, language.Translate(Template), holes);
        return _shape is null || said.Length == 0 ? said : _shape(said);
    }

    /// <summary>The phrase in English.</summary>
    public override string ToString() => In(Language.English);

    public bool Equals(Phrase? other) => other is not null && string.Equals(ToString(), other.ToString(), StringComparison.Ordinal);

    public override bool Equals(object? obj) => Equals(obj as Phrase);

    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(ToString());

    private Phrase With(object hole)
    {
        _holes.Add(hole);
        return this;
    }

    private void Hole(object content)
    {
        _said = null;
        Template += "{" + _holes.Count.ToString(CultureInfo.InvariantCulture) + "}";
        _holes.Add(content);
    }

    /// <summary>A page and its folded lines ask for the same words again and again.</summary>
    private sealed record Said(Language Language, string Words);
}
