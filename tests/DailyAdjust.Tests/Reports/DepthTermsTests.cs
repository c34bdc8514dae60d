using System.Text.RegularExpressions;
using DailyAdjust.Reports;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>Three depths that a person must not mix up: how far the ground is below full, how far past the allowable, and what the hose is to give.</summary>
public sealed partial class DepthTermsTests
{
    [Theory]
    [InlineData("below full")]
    [InlineData("past the allowable")]
    [InlineData("hose on")]
    [InlineData("short")]
    public void Each_term_is_explained_once_on_the_sheet_and_in_the_readme(string term)
    {
        Assert.Equal(1, Regex.Count(Rendered.File(ReportFiles.Html), $"<dt>{term}</dt>"));
        Assert.Equal(1, Regex.Count(File.ReadAllText(Path.Combine(Architecture.Repository.Root, "README.md")), $@"\*\*{term}\*\*", RegexOptions.IgnoreCase));
    }

    [Theory]
    [InlineData(ReportFiles.FullText)]
    [InlineData(ReportFiles.Html)]
    public void No_depth_goes_by_another_name(string file)
    {
        var said = HtmlReportTests.Readable(Rendered.File(file, InventedExceptions.Build()));
        Assert.DoesNotMatch(OtherNames(), said);
        Assert.Contains("hose on", said, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_says_all_three()
    {
        var page = HtmlReportTests.Readable(Rendered.File(ReportFiles.Html));
        Assert.Matches("[0-9] in below full, [0-9.]+ in allowable", page);
        Assert.Matches("[0-9] in past the allowable", page);
        Assert.Contains(">hose on</th>", page, StringComparison.Ordinal);
    }

    [GeneratedRegex("[0-9] (in|mm) (missing|down|beyond)|short by|[Ss]tays short|[Ll]eft short|too dry|beyond (its )?allowable")]
    private static partial Regex OtherNames();
}
