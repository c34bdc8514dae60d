using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>not_together: groups of stations of which no two may run at the same time, as site.yaml names them.</summary>
/// <param name="Name">What the sheet calls it.</param>
/// <param name="Stations">Addresses, not yet looked up.</param>
internal sealed record NotTogetherSection(string Name, IReadOnlyList<YamlText> Stations)
{
    public static IReadOnlyList<NotTogetherSection> ReadAll(Section root) => [.. root.Maps("not_together").Select(Read)];

    /// <summary>The stations meant; each that there is none of is told.</summary>
    public StationGroup Find(IReadOnlyList<StationKey> known, ProblemList problems)
    {
        var names = known.ToDictionary(k => k.ToString(), k => k, StringComparer.OrdinalIgnoreCase);
        var found = new List<StationKey>();
        foreach (var text in Stations)
        {
            if (!names.TryGetValue(text.Value, out var key))
            {
                problems.Error(text.Line, text.Column, $"not_together: there is no station {Wording.Quote(text.Value)}", Wording.DidYouMean(text.Value, [.. names.Keys.Take(12)], "stations"));
            }
            else if (found.Contains(key))
            {
                problems.Error(text.Line, text.Column, $"not_together: station {key} stands twice in {Wording.Quote(Name)}", "name each station once");
            }
            else
            {
                found.Add(key);
            }
        }

        return new StationGroup(Name, found);
    }

    private static NotTogetherSection Read(Section section)
    {
        var name = section.NeedText("name", "north lateral");
        List<YamlText> stations = [];
        if (section.Need("stations", "[C1/3, C2/1]") is { } node)
        {
            stations.AddRange(Values.Items(node).Select(item => Values.Text(item, section.NameOf("stations"), section.Problems)).OfType<YamlText>());
            if (stations.Count == 1)
            {
                section.Problems.Error(node.Line, node.Column, $"{section.NameOf("stations")} names one station", "name two or more: [C1/3, C2/1]");
            }
        }

        section.Done();
        return new(name, stations);
    }
}
