using System.Xml.Linq;
using ArchUnitNET.Domain;
using ArchUnitNET.Domain.Extensions;
using ArchUnitNET.Loader;
using Xunit;

namespace DailyAdjust.Tests.Architecture;

/// <summary>Data goes one way: between projects, and inside Core.</summary>
public class ArrowsTests
{
    private const string Root = "DailyAdjust.Core.";

    /// <summary>Each may use those before it, never those after it.</summary>
    private static readonly string[][] Layers =
    [
        ["Phrases"], ["Quantities"], ["Sites"], ["Logbook"], ["Weather"], ["Agronomy"], ["Irrigation"], ["Advice"], ["Water"], ["Morning"], ["Replay", "Plan", "Explain"],
    ];

    private static readonly Dictionary<string, string[]> AllowedProjects = new(StringComparer.Ordinal)
    {
        ["DailyAdjust.Core"] = [],
        ["DailyAdjust.Files"] = ["DailyAdjust.Core"],
        ["DailyAdjust.Ledger"] = ["DailyAdjust.Core"],
        ["DailyAdjust.Reports"] = ["DailyAdjust.Core"],
        ["DailyAdjust.Service"] = ["DailyAdjust.Core", "DailyAdjust.Files", "DailyAdjust.Ledger", "DailyAdjust.Reports"],
    };

    [Fact]
    public void Projects_refer_only_downwards()
    {
        var found = Directory.GetFiles(Path.Combine(Repository.Root, "src"), "*.csproj", SearchOption.AllDirectories);
        Assert.Equal(AllowedProjects.Keys.Order(StringComparer.Ordinal), found.Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal));
        foreach (var file in found)
        {
            var references = XDocument.Load(file).Descendants("ProjectReference")
                .Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value.Replace('\\', '/')));
            Assert.Subset(AllowedProjects[Path.GetFileNameWithoutExtension(file)].ToHashSet(StringComparer.Ordinal), references.ToHashSet(StringComparer.Ordinal));
        }
    }

    [Fact]
    public void Core_has_no_package_of_its_own()
    {
        var project = XDocument.Load(Path.Combine(Repository.Root, "src", "DailyAdjust.Core", "DailyAdjust.Core.csproj"));
        Assert.Empty(project.Descendants("PackageReference"));
    }

    [Fact]
    public void Inside_Core_every_arrow_goes_to_an_earlier_layer()
    {
        var core = new ArchLoader().LoadAssemblies(typeof(Core.Sites.Site).Assembly).Build();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var wrong = new List<string>();
        foreach (var type in core.Types.Where(t => LayerOf(t) is not null))
        {
            seen.Add(LayerOf(type)!);
            foreach (var target in type.GetTypeDependencies().Where(t => LayerOf(t) is not null))
            {
                if (Rank(LayerOf(target)!) > Rank(LayerOf(type)!))
                {
                    wrong.Add($"{type.FullName} uses {target.FullName}");
                }
            }
        }

        Assert.Empty(wrong);
        // The check looks at something: every layer that has code so far was met.
        Assert.Superset(new HashSet<string>(["Quantities", "Sites", "Logbook", "Weather", "Agronomy", "Irrigation", "Advice", "Morning"], StringComparer.Ordinal), seen);
    }

    [Fact]
    public void Every_folder_of_Core_is_a_layer_or_the_contracts()
    {
        var folders = Directory.GetDirectories(Path.Combine(Repository.Root, "src", "DailyAdjust.Core"))
            .Select(d => Path.GetFileName(d)!)
            .Where(n => n is not ("bin" or "obj" or "Contracts"));
        Assert.Subset(Layers.SelectMany(l => l).ToHashSet(StringComparer.Ordinal), folders.ToHashSet(StringComparer.Ordinal));
    }

    private static string? LayerOf(IType type) =>
        type.Namespace?.FullName is { } name && name.StartsWith(Root, StringComparison.Ordinal)
            ? Layers.SelectMany(l => l).FirstOrDefault(l => string.Equals(name[Root.Length..].Split('.')[0], l, StringComparison.Ordinal))
            : null;

    private static int Rank(string layer) => Array.FindIndex(Layers, l => l.Contains(layer, StringComparer.Ordinal));
}
