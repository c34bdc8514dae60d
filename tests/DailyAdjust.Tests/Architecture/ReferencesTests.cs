using System.Text.RegularExpressions;
using Xunit;

namespace DailyAdjust.Tests.Architecture;

/// <summary>A source named in the code is one that a reader can look up.</summary>
public class ReferencesTests
{
    [Fact]
    public void Every_key_in_the_code_stands_in_the_list_of_references()
    {
        var known = Keys(File.ReadAllText(Path.Combine(Repository.Root, "docs", "references.md")));
        Assert.Contains("FAO56", known);
        var files = Directory.GetFiles(Path.Combine(Repository.Root, "src"), "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains("/obj/", StringComparison.Ordinal) && !f.Contains("\\obj\\", StringComparison.Ordinal));
        var used = files.SelectMany(f => File.ReadLines(f).Where(l => l.Contains("//", StringComparison.Ordinal)).SelectMany(l => Keys(l[l.IndexOf("//", StringComparison.Ordinal)..]))).ToHashSet();
        used.UnionWith(files.Where(f => Path.GetFileName(Path.GetDirectoryName(f)) is "Explain").SelectMany(f => Keys(File.ReadAllText(f))));
        Assert.Contains("TR55", used);
        Assert.Contains("ASCE05", used);
        Assert.Subset(known, used);
    }

    /// <summary>Two capitals or more and perhaps digits, in square brackets.</summary>
    private static HashSet<string> Keys(string text) => [.. Regex.Matches(text, @"\[([A-Z]{2,}[0-9]*)\]").Select(m => m.Groups[1].Value)];
}
