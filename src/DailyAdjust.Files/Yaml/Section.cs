namespace DailyAdjust.Files.Yaml;

/// <summary>
/// One map of the file while it is being read. It remembers which keys were asked for: what is left over at
/// <see cref="Done"/> is unknown. Values that are wrong are told to the problem list and read as a harmless
/// stand-in, so that reading goes on and finds the rest; a description with any error is never used.
/// </summary>
internal sealed class Section(YamlMap map, string name, YamlNode at, ProblemList problems)
{
    private readonly List<string> _asked = [];

    /// <summary>"areas.greens"; empty for the outermost map.</summary>
    public string Name => name;

    /// <summary>Where the section is named: problems of the whole section point there.</summary>
    public YamlNode At => at;

    public ProblemList Problems => problems;

    /// <summary>"areas.greens.soil".</summary>
    public string NameOf(string key) => name.Length == 0 ? key : name + "." + key;

    public bool Has(string key)
    {
        Ask(key);
        return map.Entries.Any(e => Is(e.Key, key));
    }

    /// <summary>The value of a key that may be left out.</summary>
    public YamlNode? Find(string key)
    {
        Ask(key);
        var (found, value) = map.Entries.FirstOrDefault(e => Is(e.Key, key));
        if (found is null)
        {
            return null;
        }

        if (value is YamlText { IsNull: true })
        {
            problems.Error(found.Line, found.Column, $"{NameOf(key)} has no value", "give it one, or take the line out where it may be left out");
            return null;
        }

        return value;
    }

    /// <summary>The value of a key that must be there.</summary>
    public YamlNode? Need(string key, string example)
    {
        if (!Has(key))
        {
            problems.Error(at.Line, at.Column, $"{NameOf(key)} is missing", $"add \"{key}: {example}\"");
            return null;
        }

        return Find(key);
    }

    /// <summary>A map below this one; null when it is left out or is no map.</summary>
    public Section? Map(string key) => Find(key) is { } node ? AsSection(node, NameOf(key), KeyOf(key)) : null;

    public Section? NeedMap(string key, string example) => Need(key, example) is { } node ? AsSection(node, NameOf(key), KeyOf(key)) : null;

    /// <summary>Every map of a map: its key and itself, in the order of the file.</summary>
    public IReadOnlyList<(YamlText Key, Section Section)> NeedMaps(string key, string example)
    {
        if (Need(key, example) is not { } node)
        {
            return [];
        }

        if (node is not YamlMap named || named.Entries.Count == 0)
        {
            problems.Error(node.Line, node.Column, $"{NameOf(key)} is not a map of names", $"write it as {example}");
            return [];
        }

        return [.. named.Entries
            .Select(e => (e.Key, Section: AsSection(e.Value, $"{NameOf(key)}.{e.Key.Value}", e.Key)))
            .Where(e => e.Section is not null)
            .Select(e => (e.Key, e.Section!))];
    }

    /// <summary>Every map of a list, in the order of the file; empty where it is left out.</summary>
    public IReadOnlyList<Section> Maps(string key)
    {
        if (Find(key) is not { } node)
        {
            return [];
        }

        if (node is not YamlList list || list.Items.Count == 0)
        {
            problems.Error(node.Line, node.Column, $"{NameOf(key)} is not a list", "begin every entry with \"- \" on a line of its own");
            return [];
        }

        return [.. list.Items
            .Select((item, i) => AsSection(item, FormattableString.Invariant($"{NameOf(key)}[{i + 1}]"), item))
            .OfType<Section>()];
    }

    public IReadOnlyList<Section> NeedMaps(string key) => Need(key, "[{ id: ..., ... }]") is null ? [] : Maps(key);

    /// <summary>Reports the keys that nobody asked for.</summary>
    public void Done()
    {
        foreach (var (key, _) in map.Entries.Where(e => !_asked.Contains(e.Key.Value, StringComparer.Ordinal)))
        {
            problems.Error(key.Line, key.Column, $"{Wording.Quote(NameOf(key.Value))} is not a key that is known here", Wording.DidYouMean(key.Value, _asked, "known keys"));
        }
    }

    /// <summary>A map as a section; null and a problem where the node is none.</summary>
    public Section? AsSection(YamlNode node, string sectionName, YamlNode named)
    {
        switch (node)
        {
            case YamlMap below:
                return new Section(below, sectionName, named, problems);
            case YamlText { IsNull: true }:
                problems.Error(named.Line, named.Column, $"{sectionName} has no value", "give it one, or take it out where it may be left out");
                return null;
            default:
                problems.Error(node.Line, node.Column, $"{sectionName} is not a map", "write it as { key: value, key: value }");
                return null;
        }
    }

    /// <summary>Where the key stands; the section where it does not.</summary>
    public YamlNode KeyOf(string key) => map.Entries.Where(e => Is(e.Key, key)).Select(e => (YamlNode)e.Key).FirstOrDefault(at);

    private void Ask(string key)
    {
        if (!_asked.Contains(key, StringComparer.Ordinal))
        {
            _asked.Add(key);
        }
    }

    private static bool Is(YamlText key, string wanted) => string.Equals(key.Value, wanted, StringComparison.Ordinal);
}
