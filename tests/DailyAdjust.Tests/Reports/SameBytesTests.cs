using System.Globalization;
using DailyAdjust.Reports;
using DailyAdjust.Reports.Tables;
using Xunit;

namespace DailyAdjust.Tests.Reports;

public sealed class SameBytesTests
{
    [Fact]
    public void A_report_has_its_five_files()
    {
        var files = MorningReport.Render(InventedMorning.Build(), InventedMorning.Issue).All.Select(f => f.Name);
        Assert.Equal(["report.html", "report.txt", "report-full.txt", "round.csv", "advice.csv", "advice.json"], files);
    }

    [Fact]
    public void Files_are_utf8_without_mark_and_end_their_lines_with_lf()
    {
        foreach (var file in MorningReport.Render(InventedMorning.Build(), InventedMorning.Issue).All)
        {
            Assert.False(file.Bytes.Span.StartsWith((byte[])[0xEF, 0xBB, 0xBF]), file.Name);
            Assert.DoesNotContain((byte)'\r', file.Bytes.ToArray());
            Assert.Equal((byte)'\n', file.Bytes.Span[^1]);
        }
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    public void Another_culture_gives_the_same_bytes(string name)
    {
        var expected = Everything();
        var before = CultureInfo.CurrentCulture;
        var culture = CultureInfo.GetCultureInfo(name);
        if (name is "de-DE" or "tr-TR")
        {
            Assert.Equal(",", culture.NumberFormat.NumberDecimalSeparator);
        }

        try
        {
            CultureInfo.CurrentCulture = culture;
            CultureInfo.CurrentUICulture = culture;
            Assert.Equal(expected, Everything());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
            CultureInfo.CurrentUICulture = before;
        }
    }

    [Fact]
    public void Rendering_twice_gives_the_same_bytes() => Assert.Equal(Everything(), Everything());

    private static string Everything()
    {
        var days = InventedMorning.Build().Freshness.RecentDays;
        var reports = Rendered.EveryMorning.SelectMany(m => MorningReport.Render(m, InventedMorning.Issue).All).Select(f => Convert.ToHexString(f.Bytes.Span));
        var tables = new[] { WeatherTable.Of(days), BalanceTable.Of([StoredDaysTests.Day]) };
        return string.Join('\n', [.. reports, .. tables.Select(t => t.ToCsv() + t.ToJson() + t.ToText())]);
    }
}
