using System.Diagnostics;
using DailyAdjust.Files.Sites;
using Xunit;

namespace DailyAdjust.Tests.Files.Sites;

/// <summary>Files that mean harm are refused at once, with a reason, and never take memory or the process with them.</summary>
[Trait("Promise", "11")]
[Trait("Promise", "10")]
public sealed class HostileYamlTests
{
    // Tells a hang from an answer; it measures no speed.
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(60);

    [Theory]
    [InlineData("{")]
    [InlineData("[")]
    [InlineData("{a: ")]
    [InlineData("- ")]
    [InlineData("? ")]
    public void Twenty_thousand_levels_are_refused(string opening) =>
        Refused("site: " + (opening is "- " or "? " ? "\n  " : "") + string.Concat(Enumerable.Repeat(opening, 20_000)), "nested more than 32 levels deep");

    [Fact]
    public void Closed_brackets_are_refused_all_the_same() =>
        Refused("site: " + new string('[', 20_000) + new string(']', 20_000), "nested more than 32 levels deep");

    [Fact]
    public void An_alias_bomb_is_refused_at_its_first_anchor() => Refused(
        "a: &a [x, x, x, x, x, x, x, x, x]\n" + string.Concat(Enumerable.Range(0, 20).Select(i => $"{(char)('b' + i)}: &{(char)('b' + i)} [*{(char)('a' + i)}, *{(char)('a' + i)}]\n")),
        "anchors");

    [Fact]
    public void More_than_a_megabyte_is_refused() => Refused("site: \"" + new string('x', 1_000_001) + "\"", "larger than 1 MB");

    [Fact]
    public void A_megabyte_of_keys_is_read_soon_enough() =>
        Refused(string.Concat(Enumerable.Range(0, 60_000).Select(i => $"k{i}: {i}\n")), "site is missing");

    [Fact]
    public void A_megabyte_of_one_key_is_read_soon_enough() => Refused(string.Concat(Enumerable.Repeat("k: 1\n", 100_000)), "stands here a second time");

    [Theory]
    [InlineData("", "the file is empty")]
    [InlineData("# only a comment\n", "the file is empty")]
    [InlineData("just a text", "does not begin with a key")]
    [InlineData("- a\n- b\n", "does not begin with a key")]
    [InlineData("a: \u0001", "a control character")]
    [InlineData("%YAML 9.9\n---\na: b", "not YAML")]
    [InlineData("? [a, b]\n: c\n", "a list or map stands where a key belongs")]
    public void What_is_no_description_is_refused(string yaml, string what) => Refused(yaml, what);

    private static void Refused(string yaml, string what)
    {
        var clock = Stopwatch.StartNew();
        var reading = SiteReader.Read("site.yaml", yaml, "stations.csv", ExampleSiteFiles.StationsCsv);
        Assert.True(clock.Elapsed < Soon, $"took {clock.Elapsed}");
        Assert.Null(reading.Site);
        Assert.Contains(reading.Problems, p => p.What.Contains(what, StringComparison.Ordinal) && p.Line >= 1 && p.Column >= 1);
    }
}
