using DailyAdjust.Core.Phrases;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Text;

/// <summary>A part of the short text that gives way when there is much to say: what it has no room for it counts.</summary>
/// <param name="Title">Its name, for when it has no room at all.</param>
/// <param name="Say">What it says in so many lines, 1 or more; never more than asked.</param>
internal sealed record ShortSection(Phrase Title, Func<int, IReadOnlyList<string>> Say)
{
    private const int LinesOfItem = 2;
    private const int LinesOfRow = 3;

    private readonly Dictionary<int, IReadOnlyList<string>> _said = [];

    /// <summary>Lines below which it is not worth having, as far as it wants so many.</summary>
    public int Least { get; init; } = 1;

    /// <summary>Its least stands in the text however little room there is.</summary>
    public bool IsKept { get; init; }

    /// <summary>Sections with a smaller one are given room first.</summary>
    public int Order { get; init; }

    /// <summary>It takes no more, however much it has to say.</summary>
    public int Most { get; init; } = 6;

    /// <summary>Lines that it wants: for all it has to say, or <see cref="Most"/>.</summary>
    public int Wanted => Said(Most).Count;

    /// <param name="room">0 to <see cref="Wanted"/>.</param>
    public IReadOnlyList<string> LinesIn(int room) => room < 1 ? [] : Said(room);

    /// <summary>One text that says itself what it is.</summary>
    public static ShortSection Sentence(Language language, Phrase title, Phrase text, int most = LinesOfItem) => new(title, room => Folded(language, text, 0, Math.Min(most, room)));

    /// <summary>An item to a line or two.</summary>
    /// <param name="language">Of the text.</param>
    /// <param name="title">Stands on a line of its own, or before the item where there is but one.</param>
    /// <param name="items">1 or more.</param>
    /// <param name="mark">Before the title.</param>
    /// <param name="most">Lines of an item where there is room.</param>
    public static ShortSection List(Language language, Phrase title, IReadOnlyList<Phrase> items, string mark = "", int most = LinesOfItem)
    {
        Phrase head = $"{mark}{ShortTextWords.Titled(title)}";
        Phrase counted = $"{mark}{ShortTextWords.OnlyCounted(title, items.Count)}";
        return new(title, room => items.Count == 1
            ? Folded(language, $"{head} {items[0]}", 0, Math.Min(most, room))
            : Listed(items, room, most, (text, indent, lines) => Folded(language, text, indent, lines), head, counted));
    }

    /// <summary>Questions, each with its answer in a line of its own, which is never cut: where there is little room all of them in one.</summary>
    public static ShortSection Asking(Language language, QuestionGroup group, string mark)
    {
        return new(group.Title, room => Enumerable.Range(1, LinesOfItem).Reverse().Select(most => Whole(group.All, most)).FirstOrDefault(lines => lines.Count <= room)
            ?? (Whole([group.Together], LinesOfItem) is var together && together.Count <= room ? together : Whole([group.Together], 1)))
        { IsKept = true, Least = Whole([group.Together], 1).Count };

        IReadOnlyList<string> Whole(IReadOnlyList<Question> questions, int most) =>
        [
            .. questions.SelectMany(q => Folded(language, $"{mark}{ShortTextWords.Titled(group.Title)} {q.Words}", 0, most).Concat(Folded(language, q.Answer, mark.Length, int.MaxValue))),
        ];
    }

    /// <summary>Things to do, each whole, and why as far as its last line goes; those that have no room are counted.</summary>
    /// <param name="language">Of the text.</param>
    /// <param name="title">On a line of its own.</param>
    /// <param name="lead">Behind the title; empty = nothing.</param>
    /// <param name="items">1 or more.</param>
    public static ShortSection Acts(Language language, Phrase title, Phrase lead, IReadOnlyList<(Phrase Act, Phrase Why)> items)
    {
        var head = Folded(language, $"{ShortTextWords.Titled(title)}{(lead.IsEmpty ? lead : $" {lead}")}", 0, int.MaxValue);
        List<IReadOnlyList<string>> whole = [];
        return new(title, room =>
        {
            // No further than there is room: a large course has many.
            var (lines, shown) = (head.Count, 0);
            for (var i = 0; i < items.Count; i++)
            {
                if (i == whole.Count)
                {
                    whole.Add(Whole(language, items[i].Act, items[i].Why));
                }

                lines += whole[i].Count;
                if (lines > room)
                {
                    break;
                }

                shown = lines + (i + 1 < items.Count ? 1 : 0) <= room ? i + 1 : shown;
            }

            return shown == 0
                ? Folded(language, ShortTextWords.OnlyCounted(title, items.Count), 0, 1)
                : [.. head, .. whole.Take(shown).SelectMany(l => l), .. shown == items.Count ? [] : Folded(language, $"- {ShortTextWords.AndMore(items.Count - shown)}", 2, 1)];
        });
    }

    private IReadOnlyList<string> Said(int room) => _said.TryGetValue(room, out var known) ? known : _said[room] = Say(room);

    private static IReadOnlyList<string> Whole(Language language, Phrase act, Phrase why)
    {
        var lines = new TextLines(language);
        lines.AddWithClauses($"- {act}", why, 2);
        return lines.All;
    }

    /// <summary>Short items one after another.</summary>
    /// <param name="language">Of the text.</param>
    /// <param name="title">Before the first.</param>
    /// <param name="items">1 or more.</param>
    /// <param name="last">A sentence behind them, as far as it has room.</param>
    public static ShortSection Row(Language language, Phrase title, IReadOnlyList<Phrase> items, Phrase? last = null) => new(title, room =>
    {
        // What is longer than all its lines together needs not be folded to see that it has no room.
        var letters = 0;
        var most = items.TakeWhile(item => (letters += item.In(language).Length) <= room * TextLines.Width).Count();
        foreach (var text in Rows(title, items, last, most))
        {
            if (Folded(language, text, 0, room + 1) is var folded && folded.Count <= room)
            {
                return folded;
            }
        }

        return Folded(language, ShortTextWords.OnlyCounted(title, items.Count), 0, room);
    })
    { Most = LinesOfRow };

    /// <summary>In so many lines at most. A command at the end stays whole where there is more than one; the words before it give way.</summary>
    public static IReadOnlyList<string> Folded(Language language, Phrase text, int indent, int most)
    {
        var whole = Lines(language, text.In(language), indent, int.MaxValue);
        if (whole.Count <= most || most < 2 || Typed.Pieces(text.In(language)).ToList() is not [.. var before, { IsTyped: true } typed] || before.Count == 0)
        {
            return Lines(language, text.In(language), indent, most);
        }

        var answer = Lines(language, Typed.Mark(typed.Text).In(language), indent + 2, int.MaxValue);
        return answer.Count < most
            ? [.. Lines(language, string.Concat(before.Select(p => p.Text)).TrimEnd(), indent, most - answer.Count), .. answer]
            : Lines(language, text.In(language), indent, most);
    }

    private static IReadOnlyList<string> Lines(Language language, string text, int indent, int most)
    {
        var lines = new TextLines(language);
        lines.Add(text, indent, most);
        return lines.All;
    }

    /// <summary>With so many items at most, and then with ever fewer.</summary>
    private static IEnumerable<Phrase> Rows(Phrase title, IReadOnlyList<Phrase> items, Phrase? last, int most)
    {
        var head = ShortTextWords.Titled(title);
        if (most == items.Count)
        {
            Phrase all = $"{head} {Phrase.Join("; ", items)}.";
            if (last is not null)
            {
                yield return $"{all} {last}";
            }

            yield return all;
        }

        for (var shown = Math.Min(most, items.Count - 1); shown > 0; shown--)
        {
            yield return $"{head} {Phrase.Join("; ", items.Take(shown).Append(ShortTextWords.AndMore(items.Count - shown)))}.";
        }
    }

    private static IReadOnlyList<string> Listed(IReadOnlyList<Phrase> items, int room, int most, Func<Phrase, int, int, IReadOnlyList<string>> folded, Phrase head, Phrase counted)
    {
        for (var each = most; each > 0; each--)
        {
            List<string> all = [.. folded(head, 0, 1), .. items.SelectMany(i => folded($"- {i}", 2, each))];
            if (all.Count <= room)
            {
                return all;
            }
        }

        return room < 3
            ? folded(counted, 0, 1)
            : [.. folded(head, 0, 1), .. items.Take(room - 2).SelectMany(i => folded($"- {i}", 2, 1)), .. folded($"- {ShortTextWords.AndMore(items.Count - room + 2)}", 2, 1)];
    }
}
