using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>days: every day | [wed, fri] | odd | even | { every: 3, from: date }; visit: daily | [mon, thu] | { day: 1 }.</summary>
internal static class DayPatterns
{
    private static readonly string[] Weekdays = ["sun", "mon", "tue", "wed", "thu", "fri", "sat"];

    public static WaterDays WaterDays(YamlNode node, string what, Section around)
    {
        switch (node)
        {
            case YamlMap:
                var nth = around.AsSection(node, what, node)!;
                var every = (nth.Need("every", "3") is { } days ? Values.Whole(days, nth.NameOf("every"), 1, 366, nth.Problems) : null) ?? 1;
                var from = nth.NeedDate("from", "2026-06-02");
                nth.Done();
                return new WaterDays.EveryNth(every, from);
            case YamlList list:
                return new WaterDays.Weekdays(WeekdaysOf(list, what, around.Problems));
            default:
                var word = Word(node, what, around.Problems, ["every day", "odd", "even"], "[wed, fri] or { every: 3, from: 2026-06-02 }");
                return word switch
                {
                    "odd" => new WaterDays.OddDays(),
                    "even" => new WaterDays.EvenDays(),
                    { Length: 3 } => new WaterDays.Weekdays([DayOf(word)]),
                    _ => Core.Sites.WaterDays.Every,
                };
        }
    }

    public static VisitDays VisitDays(YamlNode node, string what, Section around)
    {
        switch (node)
        {
            case YamlMap:
                var monthly = around.AsSection(node, what, node)!;
                var day = (monthly.Need("day", "1") is { } value ? Values.Whole(value, monthly.NameOf("day"), 1, 31, monthly.Problems) : null) ?? 1;
                monthly.Done();
                return new VisitDays.DayOfMonth(day);
            case YamlList list:
                return new VisitDays.Weekdays(WeekdaysOf(list, what, around.Problems));
            default:
                return Word(node, what, around.Problems, ["daily"], "[mon, thu] or { day: 1 }") is { Length: 3 } word
                    ? new VisitDays.Weekdays([DayOf(word)])
                    : Core.Sites.VisitDays.Daily;
        }
    }

    /// <summary>One of the words, or a weekday's short name.</summary>
    private static string? Word(YamlNode node, string what, ProblemList problems, string[] words, string or)
    {
        if (Values.Text(node, what, problems) is not { } text)
        {
            return null;
        }

        var word = words.FirstOrDefault(w => string.Equals(w, text.Value, StringComparison.OrdinalIgnoreCase)) ?? Weekday(text.Value);
        if (word is null)
        {
            problems.Error(node.Line, node.Column, $"{what}: {Wording.Quote(text.Value)} is not known", $"write {string.Join(", ", words)}, {or}");
        }

        return word;
    }

    private static List<DayOfWeek> WeekdaysOf(YamlList list, string what, ProblemList problems)
    {
        var days = new List<DayOfWeek>();
        foreach (var item in list.Items)
        {
            if (Values.Text(item, what, problems) is not { } text)
            {
                continue;
            }

            if (Weekday(text.Value) is not { } word)
            {
                problems.Error(item.Line, item.Column, $"{what}: {Wording.Quote(text.Value)} is not a day of the week", "write mon, tue, wed, thu, fri, sat or sun");
            }
            else if (days.Contains(DayOf(word)))
            {
                problems.Error(item.Line, item.Column, $"{what}: {word} stands there twice", "keep one of them");
            }
            else
            {
                days.Add(DayOf(word));
            }
        }

        if (list.Items.Count == 0)
        {
            problems.Error(list.Line, list.Column, $"{what} names no day", "write at least one: [mon]");
        }

        return days;
    }

    /// <summary>"wed" of "Wed" or "Wednesday".</summary>
    private static string? Weekday(string text) => Weekdays.FirstOrDefault(d =>
        string.Equals(d, text, StringComparison.OrdinalIgnoreCase) || string.Equals(DayOf(d).ToString(), text, StringComparison.OrdinalIgnoreCase));

    private static DayOfWeek DayOf(string word) => (DayOfWeek)Array.IndexOf(Weekdays, word);
}
