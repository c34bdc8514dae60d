using System.Globalization;
using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Files.Yaml;

/// <summary>Turns one YAML value into what it means; null and a problem where it means nothing.</summary>
internal static class Values
{
    public static YamlText? Text(YamlNode node, string what, ProblemList problems)
    {
        if (node is YamlText { IsNull: false } text)
        {
            return text;
        }

        problems.Error(node.Line, node.Column, node is YamlText ? $"{what} has no value" : $"{what} is not a single value", "write one value");
        return null;
    }

    /// <summary>A number with its unit, converted to the kind's metric unit.</summary>
    public static double? Quantity(YamlNode node, string what, UnitKind kind, Limits limits, ProblemList problems)
    {
        if (Text(node, what, problems) is not { } text)
        {
            return null;
        }

        var fitting = $"units that fit: {string.Join(", ", Units.Spellings(kind))}";
        if (!NumberText.TrySplit(text.Value, out var number, out var spelling))
        {
            problems.Error(node.Line, node.Column, $"{what}: {Wording.Quote(text.Value)} is not a number with a unit", NumberHint(text.Value, fitting));
            return null;
        }

        if (spelling.Length == 0)
        {
            problems.Error(node.Line, node.Column, $"{what}: {Wording.Quote(text.Value)} has no unit", $"put the unit behind the number; {fitting}");
            return null;
        }

        if (Units.Find(spelling, kind) is not { } unit)
        {
            problems.Error(node.Line, node.Column, $"{what}: {Wording.Quote(spelling)} is not a unit of {NameOf(kind)}", fitting);
            return null;
        }

        var metric = unit.ToMetric(number);
        if (!limits.Holds(metric))
        {
            problems.Error(node.Line, node.Column, $"{what}: {text.Value} is out of range", $"it lies {limits.InWords(unit.FromMetric, unit.Symbol)}");
            return null;
        }

        return metric;
    }

    /// <summary>A bare number.</summary>
    public static double? Number(YamlNode node, string what, Limits limits, ProblemList problems)
    {
        if (Text(node, what, problems) is not { } text)
        {
            return null;
        }

        if (!NumberText.TryParse(text.Value, out var number))
        {
            problems.Error(node.Line, node.Column, $"{what}: {Wording.Quote(text.Value)} is not a number", NumberHint(text.Value, "write a plain number such as 0.85"));
            return null;
        }

        if (!limits.Holds(number))
        {
            problems.Error(node.Line, node.Column, $"{what}: {text.Value} is out of range", $"it lies {limits.InWords(x => x, "")}");
            return null;
        }

        return number;
    }

    public static int? Whole(YamlNode node, string what, int min, int max, ProblemList problems)
    {
        if (Number(node, what, new(min, max), problems) is not { } number)
        {
            return null;
        }

        if (!double.IsInteger(number))
        {
            problems.Error(node.Line, node.Column, $"{what}: {Wording.Number(number)} is not a whole number", "write it without decimals");
            return null;
        }

        return (int)number;
    }

    /// <summary>One of a few words, in lower case.</summary>
    public static string? Word(YamlNode node, string what, IReadOnlyList<string> words, ProblemList problems)
    {
        if (Text(node, what, problems) is not { } text)
        {
            return null;
        }

        if (words.FirstOrDefault(w => string.Equals(w, text.Value, StringComparison.OrdinalIgnoreCase)) is { } word)
        {
            return word;
        }

        problems.Error(node.Line, node.Column, $"{what}: {Wording.Quote(text.Value)} is not known", $"write {Wording.OneOf(words)}");
        return null;
    }

    public static TimeOnly? Time(YamlNode node, string what, ProblemList problems)
    {
        if (Text(node, what, problems) is not { } text)
        {
            return null;
        }

        if (TimeOnly.TryParseExact(text.Value, ["HH:mm", "H:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var time))
        {
            return time;
        }

        problems.Error(node.Line, node.Column, $"{what}: {Wording.Quote(text.Value)} is not a time of day", "write it as \"05:00\", from 00:00 to 23:59");
        return null;
    }

    public static DateOnly? Date(YamlNode node, string what, ProblemList problems)
    {
        if (Text(node, what, problems) is not { } text)
        {
            return null;
        }

        if (DateOnly.TryParseExact(text.Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) && date.Year is >= 1900 and <= 2999)
        {
            return date;
        }

        problems.Error(node.Line, node.Column, $"{what}: {Wording.Quote(text.Value)} is not a date", "write it as 2026-06-01");
        return null;
    }

    /// <summary>The values of a list; a single value counts as a list of one.</summary>
    public static IReadOnlyList<YamlNode> Items(YamlNode node) => node is YamlList list ? list.Items : [node];

    /// <summary>The kind in the words of a problem.</summary>
    public static string NameOf(UnitKind kind) => kind switch
    {
        UnitKind.Temperature => "temperature",
        UnitKind.Depth => "water depth",
        UnitKind.Length => "length",
        UnitKind.DepthRate => "water depth per hour",
        UnitKind.DepthPerDay => "water depth per day",
        UnitKind.DepthPerDepth => "water per depth of soil",
        UnitKind.Area => "area",
        UnitKind.Flow => "flow",
        UnitKind.Volume => "volume",
        UnitKind.Speed => "speed",
        UnitKind.RadiationPower or UnitKind.RadiationEnergy => "radiation",
        UnitKind.Percent => "percent",
        UnitKind.Duration => "time",
        UnitKind.Pressure => "pressure",
        UnitKind.WindRun => "a run of wind",
        UnitKind.Data => "the size of a file",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of unit."),
    };

    private static string NumberHint(string text, string otherwise)
    {
        var number = text.Split(' ')[0];
        return NumberText.LooksLikeDecimalComma(number) ? $"write a decimal point: {number.Replace(',', '.')}" : otherwise;
    }
}
