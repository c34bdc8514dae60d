using System.Buffers;
using System.Text;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace DailyAdjust.Files.Yaml;

/// <summary>
/// Reads YAML from parser events into a small tree that knows its lines and columns. Refuses what a description
/// by hand never needs and an attacker would: deep nesting, aliases, anchors, tags, more than one document, more than 1 MB.
/// </summary>
internal sealed class YamlTreeReader
{
    public const int DeepestLevel = 32;
    public const int MostBytes = 1_000_000;

    private static readonly SearchValues<char> Controls = SearchValues.Create([.. Enumerable.Range(0, 0xA0).Select(i => (char)i).Where(c => char.IsControl(c) && c is not ('\t' or '\n' or '\r'))]);

    private readonly Parser _parser;
    private readonly ProblemList _problems;
    private readonly (int Line, int Column) _end;

    private YamlTreeReader(string text, ProblemList problems)
    {
        _parser = new Parser(new StringReader(text));
        _problems = problems;
        _end = PlaceOf(text, text.Length);
    }

    /// <summary>The file's outermost map, or null with the reason among the problems.</summary>
    public static YamlMap? Read(string text, ProblemList problems)
    {
        if (Encoding.UTF8.GetByteCount(text) > MostBytes)
        {
            problems.Error(1, 1, "the file is larger than 1 MB", "a site description is a few pages; is this the right file?");
            return null;
        }

        if (text.AsSpan().IndexOfAny(Controls) is var control and >= 0)
        {
            var (line, column) = PlaceOf(text, control);
            problems.Error(line, column, "a control character stands here", "take it out; save the file as UTF-8 text");
            return null;
        }

        var reader = new YamlTreeReader(text.TrimStart('\uFEFF'), problems);
        try
        {
            return reader.Document();
        }
        catch (RefusedYamlException refused)
        {
            reader.Error(refused.Mark, refused.Message, refused.Hint);
        }
        catch (YamlException broken)
        {
            reader.Error(
                broken.Start,
                "this is not YAML: " + broken.Message.TrimEnd('.'),
                "look at this line and the one above for a missing colon, quotation mark, bracket or indent");
        }
        catch (Exception broken) when (broken is InvalidOperationException or ArgumentException or IndexOutOfRangeException or FormatException or OverflowException)
        {
            // The parser's own slips on broken text (a plain text inside braces that ends the file, say) come without a mark.
            reader.Error(reader._parser.Current?.End ?? Mark.Empty, "this is not YAML, here or soon after", "look for a missing colon, quotation mark, bracket or indent");
        }

        return null;
    }

    private YamlMap? Document()
    {
        _parser.Consume<StreamStart>();
        if (!_parser.TryConsume<DocumentStart>(out _))
        {
            _problems.Error(1, 1, "the file is empty", "write a site description, or let \"new\" write one");
            return null;
        }

        var root = Node(0);
        _parser.Consume<DocumentEnd>();
        if (_parser.Accept<DocumentStart>(out var second))
        {
            throw new RefusedYamlException(second.Start, "a second document begins here", "one file holds one site: take the line \"---\" out");
        }

        if (root is YamlMap map)
        {
            return map;
        }

        _problems.Error(root.Line, root.Column, "the file does not begin with a key", "begin with \"site:\"");
        return null;
    }

    private YamlNode Node(int level)
    {
        if (_parser.Accept<AnchorAlias>(out var alias))
        {
            throw new RefusedYamlException(alias.Start, "aliases (*name) are not read", "write the value out");
        }

        if (!_parser.Accept<NodeEvent>(out var node))
        {
            throw new RefusedYamlException(_parser.Current?.Start ?? Mark.Empty, "a value is missing here", "write one");
        }

        if (!node.Anchor.IsEmpty)
        {
            throw new RefusedYamlException(node.Start, "anchors (&name) are not read", "take it out, or put the text in quotation marks");
        }

        if (!node.Tag.IsEmpty)
        {
            throw new RefusedYamlException(node.Start, "tags (!name) are not read", "take it out, or put the text in quotation marks");
        }

        if (level >= DeepestLevel)
        {
            throw new RefusedYamlException(node.Start, $"nested more than {DeepestLevel} levels deep", "a site description needs 6; look for a bracket too many");
        }

        return node switch
        {
            MappingStart => Map(level),
            SequenceStart => List(level),
            _ => Text(),
        };
    }

    private YamlText Text()
    {
        var scalar = _parser.Consume<Scalar>();
        return new(scalar.Value, scalar.Style is not (ScalarStyle.Plain or ScalarStyle.Any), Line(scalar.Start), Column(scalar.Start));
    }

    private YamlList List(int level)
    {
        var start = _parser.Consume<SequenceStart>().Start;
        var items = new List<YamlNode>();
        while (!_parser.TryConsume<SequenceEnd>(out _))
        {
            items.Add(Node(level + 1));
        }

        return new(items, Line(start), Column(start));
    }

    private YamlMap Map(int level)
    {
        var start = _parser.Consume<MappingStart>().Start;
        var entries = new List<(YamlText Key, YamlNode Value)>();
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        while (!_parser.TryConsume<MappingEnd>(out _))
        {
            var key = Node(level + 1);
            var value = Node(level + 1);
            if (key is not YamlText text)
            {
                _problems.Error(key.Line, key.Column, "a list or map stands where a key belongs", "write \"key: value\"");
            }
            else if (seen.TryGetValue(text.Value, out var first))
            {
                _problems.Error(text.Line, text.Column, FormattableString.Invariant($"{Wording.Quote(text.Value)} stands here a second time; the first is in line {first}"), "keep one of them");
            }
            else
            {
                seen.Add(text.Value, text.Line);
                entries.Add((text, value));
            }
        }

        return new(entries, Line(start), Column(start));
    }

    private void Error(Mark mark, string what, string hint) => _problems.Error(Line(mark), Column(mark), what, hint);

    /// <summary>The parser takes the end of a text for one line more; what is wrong there stands in the last one.</summary>
    private int Line(Mark mark) => (int)Math.Clamp(mark.Line, 1, _end.Line);

    private int Column(Mark mark) => mark.Line > _end.Line ? _end.Column : (int)Math.Max(1, mark.Column);

    /// <summary>Line and column of a character, from 1; lines end as in YAML.</summary>
    private static (int Line, int Column) PlaceOf(string text, int at)
    {
        var (line, begin) = (1, 0);
        for (var i = 0; i < at; i++)
        {
            if (text[i] is '\n' or '\u2028' or '\u2029' || (text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n')))
            {
                (line, begin) = (line + 1, i + 1);
            }
        }

        return (line, at - begin + 1);
    }

    private sealed class RefusedYamlException(Mark mark, string what, string hint) : Exception(what)
    {
        public Mark Mark { get; } = mark;

        public string Hint { get; } = hint;
    }
}
