using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>A list of areas that the site has.</summary>
internal static class AreaNames
{
    public static List<string> Read(YamlNode node, string what, ProblemList problems, IReadOnlyList<string> areas)
    {
        var names = new List<string>();
        foreach (var item in Values.Items(node))
        {
            if (Values.Text(item, what, problems) is not { } text)
            {
                continue;
            }

            if (Names.Find(areas, text.Value) is { } name)
            {
                names.Add(name);
            }
            else
            {
                problems.Error(item.Line, item.Column, $"{what}: there is no area {Wording.Quote(text.Value)}", Wording.DidYouMean(text.Value, areas, "areas"));
            }
        }

        return names;
    }
}
