using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Text;

/// <summary>A part of the short text that gives way when there is much to say: what it has no room for it counts.</summary>
/// <param name="Title">Its name, for when it has no room at all.</param>
/// <param name="Say">What it says in so many lines, 1 or more; never more than asked.</param>
internal sealed record ShortSection(string Title, Func<int, IReadOnlyList<string>> Say)
{
    private const int LinesOfItem = 2;
    private const int LinesOfRow = 3;

    /// <summary>Lines below which it is not worth having, as far as it wants so many.</summary>
    public int Least { get; init; } = 1;

    /// <summary>Sections with a smaller one are given room first.</summary>
    public int Order { get; init; }

    /// <summary>It takes no more, however much it has to say.</summary>
    public int Most { get; init; } = 6;

    /// <summary>Lines that it wants: for all it has to say, or <see cref="Most"/>.</summary>
    public int Wanted => Say(Most).Count;

    /// <param name="room">0 to <see cref="Wanted"/>.</param>
    public IReadOnlyList<string> Lines(int room) => room < 1 ? [] : Say(room);

    /// <summary>One text that says itself what it is.</summary>
    public static ShortSection Sentence(string title, string text, int most = LinesOfItem) => new(title, room => Folded(text, 0, Math.Min(most, room)));

    /// <summary>An item to a line or two.</summary>
    /// <param name="title">Stands on a line of its own, or before the item where there is but one.</param>
    /// <param name="items">1 or more.</param>
    /// <param name="mark">Before the title.</param>
    /// <param name="most">Lines of an item where there is room.</param>
    public static ShortSection List(string title, IReadOnlyList<string> items, string mark = "", int most = LinesOfItem)
    {
        var head = mark + ShortTextWords.Titled(title);
        return new(title, room => items.Count == 1 ? Folded($"{head} {items[0]}", 0, Math.Min(most, room)) : Listed(head, items, room, most));
    }

    /// <summary>Short items one after another.</summary>
    /// <param name="title">Before the first.</param>
    /// <param name="items">1 or more.</param>
    /// <param name="last">A sentence behind them, as far as it has room.</param>
    public static ShortSection Row(string title, IReadOnlyList<string> items, string last = "") => new(title, room =>
    {
        foreach (var text in Rows(title, items, last))
        {
            if (Folded(text, 0, room + 1) is var folded && folded.Count <= room)
            {
                return folded;
            }
        }

        return Folded(ShortTextWords.OnlyCounted(title, items.Count), 0, room);
    })
    { Most = LinesOfRow };

    public static IReadOnlyList<string> Folded(string text, int indent, int most)
    {
        var lines = new TextLines();
        lines.Add(text, indent, most);
        return lines.All;
    }

    /// <summary>The same with ever fewer items.</summary>
    private static IEnumerable<string> Rows(string title, IReadOnlyList<string> items, string last)
    {
        var head = ShortTextWords.Titled(title) + " ";
        var all = head + string.Join("; ", items) + ".";
        if (last.Length > 0)
        {
            yield return $"{all} {last}";
        }

        yield return all;
        for (var shown = items.Count - 1; shown > 0; shown--)
        {
            yield return head + string.Join("; ", items.Take(shown).Append(ShortTextWords.AndMore(items.Count - shown))) + ".";
        }
    }

    private static IReadOnlyList<string> Listed(string head, IReadOnlyList<string> items, int room, int most)
    {
        for (var each = most; each > 0; each--)
        {
            List<string> all = [head, .. items.SelectMany(i => Folded("- " + i, 2, each))];
            if (all.Count <= room)
            {
                return all;
            }
        }

        return room < 3
            ? Folded(ShortTextWords.OnlyCounted(head.TrimEnd(':'), items.Count), 0, 1)
            : [head, .. items.Take(room - 2).SelectMany(i => Folded("- " + i, 2, 1)), .. Folded("- " + ShortTextWords.AndMore(items.Count - room + 2), 2, 1)];
    }
}
