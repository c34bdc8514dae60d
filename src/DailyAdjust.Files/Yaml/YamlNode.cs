namespace DailyAdjust.Files.Yaml;

/// <summary>A piece of a YAML file and where it begins, from 1.</summary>
internal abstract class YamlNode(int line, int column)
{
    public int Line { get; } = line;

    public int Column { get; } = column;
}

/// <summary>A single value; <paramref name="quoted"/> tells an empty text from no value.</summary>
internal sealed class YamlText(string value, bool quoted, int line, int column) : YamlNode(line, column)
{
    public string Value { get; } = value;

    public bool IsNull { get; } = !quoted && value is "" or "~" or "null" or "Null" or "NULL";
}

internal sealed class YamlList(IReadOnlyList<YamlNode> items, int line, int column) : YamlNode(line, column)
{
    public IReadOnlyList<YamlNode> Items { get; } = items;
}

/// <summary>Keys and values in the order of the file; keys are unique.</summary>
internal sealed class YamlMap(IReadOnlyList<(YamlText Key, YamlNode Value)> entries, int line, int column) : YamlNode(line, column)
{
    public IReadOnlyList<(YamlText Key, YamlNode Value)> Entries { get; } = entries;
}
