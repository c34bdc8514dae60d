using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Tables;
using DailyAdjust.Reports.Words;
using DailyAdjust.Tests.Advice;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>What a person reads about catch cups, in the units of the site.</summary>
public sealed class AuditWordsTests
{
    private static readonly Site Metric = SmallCourse.OneStation(0).Site;

    /// <summary>10 mm an hour, uniformity 75 %: multiplier 1 / 0.85.</summary>
    private static readonly double[] Cups = [.. Enumerable.Repeat(7.5, 5), .. Enumerable.Repeat(32.5 / 3, 15)];

    private static readonly IReadOnlyList<StationAudit> Good = StationAudit.Of([new([SmallCourse.Station(1)], 60, Cups, 1)]);

    [Fact]
    public void Minutes_by_the_mean_and_with_the_multiplier()
    {
        Assert.Equal("C1/1: 6.0 mm takes 36 min at the mean rate, x 1.18 = 42.4 min for the drier ground to have enough.", AuditWords.Of(Metric, Good)[0]);
        Assert.Equal("C1/1: 0.25 in takes 38.1 min at the mean rate, x 1.18 = 44.8 min for the drier ground to have enough.", AuditWords.Of(Metric with { Units = UnitSystem.Us }, Good)[0]);
    }

    [Fact]
    public void The_table_speaks_the_sites_units()
    {
        var us = AuditTable.Summary(Metric with { Units = UnitSystem.Us }, Good).ToText();
        Assert.Contains("rate (in/h)", us, StringComparison.Ordinal);
        Assert.Contains("0.39", us, StringComparison.Ordinal);
        var metric = AuditTable.Summary(Metric, Good).ToText();
        Assert.Contains("rate (mm/h)", metric, StringComparison.Ordinal);
        Assert.Contains("75 %  as expected", metric, StringComparison.Ordinal);
    }

    [Fact]
    public void A_healthy_run_has_no_remark_and_every_remark_has_words_and_a_code()
    {
        Assert.DoesNotContain(AuditWords.Of(Metric, Good), l => l.StartsWith('!'));
        var bad = StationAudit.Of(
        [
            new([SmallCourse.Station(1), SmallCourse.Station(2)], 60, [1, 5, 5, 5], 6),
            new([SmallCourse.Station(3)], 60, [0, 5, 5, 5]),
        ]);
        var lines = AuditWords.Of(Metric, bad).Where(l => l.StartsWith('!')).ToList();
        Assert.Contains("! C1/1 and C1/2: 4 cups are few: 20 and more on an even grid are common practice.", lines);
        Assert.Contains(lines, l => l.Contains("6.0 m/s of wind: above 2.2 m/s", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.StartsWith("! C1/2: 4.0 mm/h is 60 % below the 10.0 mm/h of the description (assumed)", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.StartsWith("! C1/3: the lowest quarter of the cups got nothing", StringComparison.Ordinal));
        Assert.Equal(lines.Count, lines.Distinct(StringComparer.Ordinal).Count());

        var rows = AuditTable.Of(bad).Rows;
        Assert.Equal("few-cups;windy;together;rate-differs;uneven", rows[0][^1].Written);
        Assert.Equal("few-cups;wind-unknown;rate-differs;dry-quarter", rows[2][^1].Written);
        Assert.All(rows, r => Assert.Equal(AuditTable.Columns.Count, r.Count));
    }

    [Fact]
    public void No_sentence_calls_anything_safe() =>
        Assert.All([.. AuditWords.Of(Metric, Good), .. AuditWords.Cautions], l => Assert.DoesNotContain("safe", l, StringComparison.OrdinalIgnoreCase));
}
