using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Files.Yaml;

/// <summary>The values of a section by key: with a default where they may be left out, or needed with an example for the hint.</summary>
internal static class SectionValues
{
    /// <summary>Read in place of a value that is wrong or missing; never used, since the problem refuses the description.</summary>
    private const double StandIn = 1;

    public static string Text(this Section section, string key, string otherwise) =>
        section.Find(key) is { } node ? Values.Text(node, section.NameOf(key), section.Problems)?.Value ?? otherwise : otherwise;

    public static string NeedText(this Section section, string key, string example)
    {
        if (section.Need(key, example) is not { } node || Values.Text(node, section.NameOf(key), section.Problems) is not { } text)
        {
            return "";
        }

        if (string.IsNullOrWhiteSpace(text.Value))
        {
            section.Problems.Error(node.Line, node.Column, $"{section.NameOf(key)} is empty", $"write it as \"{key}: {example}\"");
        }

        return text.Value.Trim();
    }

    /// <summary>An id that stands in addresses such as C1/P2: letters and digits without blanks, slashes, colons or commas.</summary>
    public static string NeedId(this Section section, string example)
    {
        var id = section.NeedText("id", example);
        Names.Check(id, section.KeyOf("id"), section.NameOf("id"), section.Problems);
        return id;
    }

    public static double? Quantity(this Section section, string key, UnitKind kind, Limits limits) =>
        section.Find(key) is { } node ? Values.Quantity(node, section.NameOf(key), kind, limits, section.Problems) : null;

    public static double NeedQuantity(this Section section, string key, UnitKind kind, Limits limits, string example) =>
        (section.Need(key, example) is { } node ? Values.Quantity(node, section.NameOf(key), kind, limits, section.Problems) : null) ?? StandIn;

    public static double? Number(this Section section, string key, Limits limits) =>
        section.Find(key) is { } node ? Values.Number(node, section.NameOf(key), limits, section.Problems) : null;

    public static double NeedNumber(this Section section, string key, Limits limits, string example) =>
        (section.Need(key, example) is { } node ? Values.Number(node, section.NameOf(key), limits, section.Problems) : null) ?? StandIn;

    public static int? Whole(this Section section, string key, int min, int max) =>
        section.Find(key) is { } node ? Values.Whole(node, section.NameOf(key), min, max, section.Problems) : null;

    public static bool Flag(this Section section, string key) =>
        section.Find(key) is { } node && Values.Word(node, section.NameOf(key), ["true", "false"], section.Problems) is "true";

    /// <summary>The first word is the default.</summary>
    public static string Word(this Section section, string key, params string[] words) =>
        (section.Find(key) is { } node ? Values.Word(node, section.NameOf(key), words, section.Problems) : null) ?? words[0];

    public static string NeedWord(this Section section, string key, params string[] words) =>
        (section.Need(key, words[0]) is { } node ? Values.Word(node, section.NameOf(key), words, section.Problems) : null) ?? words[0];

    public static TimeOnly? Time(this Section section, string key) =>
        section.Find(key) is { } node ? Values.Time(node, section.NameOf(key), section.Problems) : null;

    public static TimeOnly NeedTime(this Section section, string key, string example) =>
        (section.Need(key, example) is { } node ? Values.Time(node, section.NameOf(key), section.Problems) : null) ?? TimeOnly.MinValue;

    public static DateOnly? Date(this Section section, string key) =>
        section.Find(key) is { } node ? Values.Date(node, section.NameOf(key), section.Problems) : null;

    public static DateOnly NeedDate(this Section section, string key, string example) =>
        (section.Need(key, example) is { } node ? Values.Date(node, section.NameOf(key), section.Problems) : null) ?? new DateOnly(2000, 1, 1);

    /// <summary>Times of day in ascending order, each once.</summary>
    public static IReadOnlyList<TimeOnly> Times(this Section section, YamlNode node, string key)
    {
        var times = new List<TimeOnly>();
        foreach (var item in Values.Items(node))
        {
            if (Values.Time(item, section.NameOf(key), section.Problems) is not { } time)
            {
                continue;
            }

            if (times.Contains(time))
            {
                section.Problems.Error(item.Line, item.Column, FormattableString.Invariant($"{section.NameOf(key)}: {time:HH:mm} stands there twice"), "keep one of them");
            }
            else
            {
                times.Add(time);
            }
        }

        if (node is YamlList { Items.Count: 0 })
        {
            section.Problems.Error(node.Line, node.Column, $"{section.NameOf(key)} is empty", $"write at least one time: {key}: [\"05:00\"]");
        }

        times.Sort();
        return times;
    }
}
