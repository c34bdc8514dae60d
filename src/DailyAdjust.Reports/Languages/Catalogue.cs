using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Languages;

/// <summary>A translator's file: English templates and those of one language beside them, in gettext's PO form, of which comments, msgid and msgstr are read.</summary>
public sealed partial class Catalogue
{
    private readonly Dictionary<string, string> _entries;

    private Catalogue(string code, Dictionary<string, string> entries) => (Code, _entries) = (code, entries);

    /// <summary>"es".</summary>
    public string Code { get; }

    /// <summary>The other language's template by the English one; none is empty.</summary>
    public IReadOnlyDictionary<string, string> Entries => _entries;

    /// <summary>The catalogue of a language, as it was built into the program.</summary>
    /// <exception cref="FormatException">The file is no catalogue.</exception>
    public static Catalogue Read(string code)
    {
        using var stream = typeof(Catalogue).Assembly.GetManifestResourceStream(code + ".po")
            ?? throw new ArgumentException($"There is no catalogue {code}.po.", nameof(code));
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return Parse(code, reader.ReadToEnd());
    }

    /// <param name="code">The language's.</param>
    /// <param name="text">The file's.</param>
    /// <exception cref="FormatException">A line is none of a catalogue, or a template stands twice; the message names the line.</exception>
    public static Catalogue Parse(string code, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var entries = new Dictionary<string, string>(StringComparer.Ordinal);
        string? english = null;
        StringBuilder? reading = null;
        StringBuilder? other = null;
        var (number, at) = (0, 0);
        var (isFuzzy, isNextFuzzy) = (false, false);
        foreach (var line in text.ReplaceLineEndings("\n").Split('\n').Select(l => l.Trim()).Append("msgid \"\""))
        {
            number++;
            if (line.StartsWith("msgid ", StringComparison.Ordinal))
            {
                Add();
                (at, isNextFuzzy) = (number, false);
                reading = new StringBuilder(Quoted(line[6..]));
            }
            else if (line.StartsWith("msgstr ", StringComparison.Ordinal) && reading is not null)
            {
                english = reading.ToString();
                other = reading = new StringBuilder(Quoted(line[7..]));
            }
            else if (line.StartsWith('"') && reading is not null)
            {
                reading.Append(Quoted(line));
            }
            else if (line.StartsWith("#,", StringComparison.Ordinal))
            {
                isNextFuzzy |= line.Contains("fuzzy", StringComparison.Ordinal);
            }
            else if (line.Length > 0 && line[0] != '#')
            {
                throw Wrong("neither msgid, msgstr, a text in quotation marks nor a comment");
            }
        }

        return new(code, entries);

        // The header is the entry without a template; what is not translated yet, or only guessed by an editor (fuzzy), stays English.
        void Add()
        {
            if (english is null && reading is { Length: > 0 })
            {
                throw Wrong($"\"{reading}\" has no msgstr", at);
            }

            if (!isFuzzy && english is { Length: > 0 } && other is { Length: > 0 } && !entries.TryAdd(english, other.ToString()))
            {
                throw Wrong($"\"{english}\" stands twice", at);
            }

            (english, other, reading, isFuzzy) = (null, null, null, isNextFuzzy);
        }

        string Quoted(string quoted) => quoted.Length >= 2 && quoted[0] == '"' && quoted[^1] == '"'
            ? Escaped().Replace(quoted[1..^1], m => m.ValueSpan[1] == 'n' ? "\n" : m.Value[1..])
            : throw Wrong("no text in quotation marks");

        FormatException Wrong(string what, int? line = null) => new(string.Create(CultureInfo.InvariantCulture, $"{code}.po, line {line ?? number}: {what}."));
    }

    [GeneratedRegex("\\\\[\"n\\\\]", RegexOptions.None, 1000)]
    private static partial Regex Escaped();

    public Language AsLanguage() => new(Code, template => _entries.GetValueOrDefault(template, template));
}
