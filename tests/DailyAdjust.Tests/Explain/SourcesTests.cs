using System.Text.RegularExpressions;
using DailyAdjust.Tests.Architecture;
using Xunit;

namespace DailyAdjust.Tests.Explain;

/// <summary>A page that an explanation names stands beside the calculation itself; where none stands there, it names none.</summary>
public class SourcesTests
{
    [Fact]
    public void Every_page_stands_beside_the_calculation_too()
    {
        var core = Path.Combine(Repository.Root, "src", "DailyAdjust.Core");
        var calculation = string.Concat(new[] { "Weather", "Agronomy" }.SelectMany(folder => Directory.GetFiles(Path.Combine(core, folder), "*.cs", SearchOption.AllDirectories)).Select(File.ReadAllText));
        var cited = Directory.GetFiles(Path.Combine(core, "Explain"), "*.cs")
            .SelectMany(f => Regex.Matches(File.ReadAllText(f), @"(?<=""\[\w+\] )[^"":]*, p\. [0-9-]+").Select(m => m.Value))
            .Distinct(StringComparer.Ordinal)
            .ToList();
        Assert.True(cited.Count > 10, string.Join("; ", cited));
        Assert.All(cited, citation => Assert.Contains(citation, calculation, StringComparison.Ordinal));
    }
}
