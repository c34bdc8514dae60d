using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>A list of areas by name.</summary>
internal static class AreaList
{
    public static IReadOnlyList<string> Read(YamlNode node, string key, ProblemList problems, IReadOnlyList<string> areas)
    {
        var names = new List<string>();
        foreach (var item in Values.Items(node))
        {
            if (Values.Text(item, key, problems) is not { } text)
            {
                continue;
            }

            if (Names.Find(areas, text.Value) is { } name)
            {
                names.Add(name);
            }
            else
            {
                problems.Error(item.Line, item.Column, $"{key}: there is no area {Wording.Quote(text.Value)}", Wording.DidYouMean(text.Value, areas, "areas"));
            }
        }

        return names;
    }
}
