using System.Text;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Reports.Tables;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Text;

/// <summary>Collects lines no wider than a terminal. Texts from files cannot break out of their line.</summary>
/// <param name="language">Of the lines.</param>
internal sealed class TextLines(Language language)
{
    public const int Width = 100;

    private const string Goes = "...";

    /// <summary>No text has it: its control characters are blanks by then.</summary>
    private const char KeptBlank = '\u0001';

    private readonly List<string> _lines = [];

    public IReadOnlyList<string> All => _lines;

    public void Blank()
    {
        if (_lines.Count > 0 && _lines[^1].Length > 0)
        {
            _lines.Add("");
        }
    }

    /// <summary>Adds a phrase in the lines' language.</summary>
    public void Add(Phrase phrase, int indent = 0, int most = 8) => Add(phrase.In(language), indent, most);

    /// <summary>Adds a text, folded at blanks; what follows the first line is indented.</summary>
    /// <param name="text">One sentence or more.</param>
    /// <param name="indent">Blanks in front of every line.</param>
    /// <param name="most">The most lines; the last ends in "..." when there is more.</param>
    public void Add(string text, int indent = 0, int most = 8)
    {
        var folded = Fold(text, Width - indent - 2);
        if (folded.Count > most)
        {
            folded = [.. folded.Take(most)];
            folded[^1] = BreakOff(folded[^1], Width - indent - 2);
        }

        _lines.AddRange(folded.Select((line, i) => new string(' ', i == 0 ? indent : indent + 2) + line));
    }

    /// <summary>Adds a phrase whole, and behind it as many parts of another as its last line, or so many lines more, have room for.</summary>
    /// <param name="whole">What must not be cut.</param>
    /// <param name="more">What may.</param>
    /// <param name="indent">Blanks in front of every line.</param>
    /// <param name="further">Lines beside those of the first, for where not even one part fits in them.</param>
    /// <param name="atLeastOne">The first part stands whatever it takes.</param>
    public void AddWithClauses(Phrase whole, Phrase more, int indent, int further = 0, bool atLeastOne = false)
    {
        var said = whole.In(language);
        var lines = Fold(said, Width - indent - 2).Count;
        var all = more.IsEmpty ? [] : Clauses.Of(more.In(language)).Select(part => $"{said} {part}").ToList();
        var fits = Enumerable.Range(lines, further + 1).Select(most => all.Find(text => Fold(text, Width - indent - 2).Count <= most)).FirstOrDefault(text => text is not null);
        Add(fits ?? (atLeastOne && all.Count > 0 ? all[^1] : said), indent, most: int.MaxValue);
    }

    /// <summary>Adds pieces one after another, none of them broken over two lines where it fits one.</summary>
    public void AddPieces(IReadOnlyList<Phrase> pieces, int indent = 0) => Add(Phrase.Join(" ", pieces.Select(Typed.InOnePiece)), indent, most: int.MaxValue);

    /// <summary>Adds what was folded elsewhere.</summary>
    public void AddAll(IEnumerable<string> lines) => _lines.AddRange(lines);

    /// <summary>Adds a list; what is beyond its length is counted.</summary>
    /// <param name="items">A text each.</param>
    /// <param name="length">The most items.</param>
    /// <param name="mark">In front of each.</param>
    /// <param name="indent">Blanks in front of every line.</param>
    /// <param name="most">The most lines of an item.</param>
    public void AddList(IReadOnlyList<Phrase> items, int length, string mark = "-", int indent = 2, int most = 8)
    {
        foreach (var item in items.Take(length))
        {
            Add($"{mark} {item}", indent, most);
        }

        if (items.Count > length)
        {
            Add($"{mark} {ShortTextWords.AndMore(items.Count - length)}", indent);
        }
    }

    public override string ToString()
    {
        var text = new StringBuilder();
        foreach (var line in _lines)
        {
            text.Append(line.TrimEnd()).Append('\n');
        }

        return text.ToString();
    }

    private static List<string> Fold(string text, int width)
    {
        var folded = new List<string>();
        var line = new StringBuilder();
        var words = KeptTogether(text, width).AsSpan();
        foreach (var range in words.Split(' '))
        {
            var word = words[range];
            if (word.Length > width)
            {
                word = Cut(word.ToString(), width);
            }

            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                folded.Add(line.Replace(KeptBlank, ' ').ToString());
                line.Clear();
            }

            line.Append(line.Length > 0 ? " " : "").Append(word);
        }

        folded.Add(line.Replace(KeptBlank, ' ').ToString());
        return folded;
    }

    /// <summary>The text, in which blanks that no line may break at are <see cref="KeptBlank"/>: what is to be typed stays in one piece where it fits a line, for people copy it.</summary>
    private static string KeptTogether(string text, int width)
    {
        var kept = new StringBuilder(text.Length);
        foreach (var (piece, isTyped) in Typed.Pieces(text))
        {
            var oneLine = TableText.OneLine(piece);
            kept.Append(isTyped && oneLine.Length <= width ? oneLine.Replace(' ', KeptBlank) : oneLine);
        }

        return kept.ToString();
    }

    /// <summary>Up to the end of a part of a sentence, or as many whole words as leave room for " ...".</summary>
    private static string BreakOff(string line, int width)
    {
        if (Clauses.Longest(line, width - Goes.Length - 1) is { } part && part.Length >= width / 2)
        {
            return $"{part} {Goes}";
        }

        while (line.Length > width - Goes.Length - 1 && line.LastIndexOf(' ') is var blank and > 0)
        {
            line = line[..blank];
        }

        return Cut($"{line} {Goes}", width);
    }

    /// <summary>A text of so many letters at most, "..." among them; no letter that takes two signs is torn.</summary>
    public static string Cut(string text, int most) => text.Length <= most ? text
        : string.Concat(text.AsSpan(0, char.IsHighSurrogate(text[most - Goes.Length - 1]) ? most - Goes.Length - 1 : most - Goes.Length), Goes);
}
