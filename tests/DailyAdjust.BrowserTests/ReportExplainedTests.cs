using System.Text.RegularExpressions;
using DailyAdjust.ServiceTests;
using Xunit;

namespace DailyAdjust.BrowserTests;

/// <summary>docs/report-explained.md and its pictures belong together.</summary>
public sealed class ReportExplainedTests
{
    [Fact]
    public void The_text_shows_every_picture_and_says_what_is_on_it()
    {
        var docs = Path.Combine(Repository.Root, "docs");
        var text = File.ReadAllText(Path.Combine(docs, "report-explained.md"));
        var shown = Regex.Matches(text, @"!\[[^\]]{30,}\]\(pictures/(?<name>[a-z-]+)\.png\)", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5)).Select(m => m.Groups["name"].Value).Order(StringComparer.Ordinal).ToList();
        Assert.Equal([.. PicturesTests.Parts.Select(p => p.Data.Item1).Concat(["phone", "paper", "index"]).Order(StringComparer.Ordinal)], shown);
        Assert.Equal(shown, Directory.GetFiles(Path.Combine(docs, "pictures")).Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal));
    }
}
