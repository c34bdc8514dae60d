using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Advice;
using Xunit;

namespace DailyAdjust.Tests.Plan;

/// <summary>Catch cups to rate, uniformity and multiplier.</summary>
public sealed class CatchAuditTests
{
    private static readonly Station[] One = [SmallCourse.Station(1)];

    /// <summary>16 cups, mL. By hand: sum 375, mean 23.4375; the four lowest are 15, 17, 18 and 19, mean 17.25.</summary>
    private static readonly double[] Millilitres = [20, 22, 25, 18, 30, 28, 26, 24, 15, 19, 27, 29, 23, 21, 31, 17];

    [Fact]
    public void Sixteen_cups_reckoned_by_hand()
    {
        var audit = CatchAudit.Of(new(One, 15, Millilitres));
        Assert.Equal(23.4375, audit.MeanMm, 1e-12);
        Assert.Equal(17.25, audit.LowestMm, 1e-12);
        Assert.Equal(93.75, audit.RateMmPerHour, 1e-12);
        Assert.Equal(0.736, audit.LowerQuarter, 1e-12);
        Assert.Equal(1 / 0.8416, audit.Multiplier, 1e-12);
    }

    /// <summary>Audit guidelines: uniformity = mean of the lowest quarter of the cups / mean of all. It knows no unit and no order.</summary>
    [Fact]
    public void Uniformity_depends_on_neither_unit_nor_order()
    {
        var inInches = CatchAudit.Of(new(One, 15, [.. Millilitres.Reverse().Select(v => v / 25.4)]));
        Assert.Equal(0.736, inInches.LowerQuarter, 1e-12);
    }

    [Theory] // 1 / (0.4 + 0.6 DU): landscape irrigation handbook, from memory.
    [InlineData(1.00, 1.00)]
    [InlineData(0.85, 1.10)]
    [InlineData(0.75, 1.18)]
    [InlineData(0.70, 1.22)]
    [InlineData(0.55, 1.37)]
    [InlineData(0.40, 1.56)]
    [InlineData(0.00, 2.50)]
    public void The_multiplier_of_a_uniformity(double uniformity, double multiplier) =>
        Assert.Equal(multiplier, CatchAudit.Of(new(One, 10, WithUniformity(uniformity))).Multiplier, 0.005);

    [Theory] // Golf Course Management: 80 % excellent; 70 % expected; 55 % and less poor.
    [InlineData(0.80, UniformityClass.Excellent)]
    [InlineData(0.799, UniformityClass.Expected)]
    [InlineData(0.70, UniformityClass.Expected)]
    [InlineData(0.699, UniformityClass.BelowExpected)]
    [InlineData(0.551, UniformityClass.BelowExpected)]
    [InlineData(0.55, UniformityClass.Poor)]
    [InlineData(0, UniformityClass.Poor)]
    public void The_class_of_a_uniformity(double uniformity, UniformityClass expected) =>
        Assert.Equal(expected, CatchAudit.Of(new(One, 10, WithUniformity(uniformity))).Class);

    [Theory] // Common practice; no source: a quarter that is no whole number of cups is rounded, halves up.
    [InlineData(4, 1)]
    [InlineData(5, 1)]
    [InlineData(6, 2)]
    [InlineData(7, 2)]
    [InlineData(8, 2)]
    [InlineData(22, 6)]
    [InlineData(25, 6)]
    public void How_many_cups_are_a_quarter(int cups, int quarter)
    {
        // Depths 1, 2, ..., n: the mean of the lowest q is (q + 1) / 2.
        var audit = CatchAudit.Of(new(One, 10, [.. Enumerable.Range(1, cups).Select(i => (double)i)]));
        Assert.Equal((quarter + 1) / 2.0, audit.LowestMm, 1e-12);
    }

    [Fact]
    public void The_lowest_quarter_is_never_above_the_mean()
    {
        var audit = CatchAudit.Of(new(One, 10, [0.1, 0.1, 0.1, 0.1, 0.1, 0.1]));
        Assert.Equal(1, audit.LowerQuarter, 1e-12);
        Assert.True(audit.LowerQuarter <= 1);
    }

    [Fact]
    public void What_cannot_be_an_audit_is_a_bug_of_the_caller()
    {
        Assert.Throws<ArgumentException>(() => CatchAudit.Of(new([], 10, [1, 1, 1, 1])));
        Assert.Throws<ArgumentException>(() => CatchAudit.Of(new(One, 10, [1, 1, 1])));
        Assert.Throws<ArgumentException>(() => CatchAudit.Of(new(One, 0, [1, 1, 1, 1])));
        Assert.Throws<ArgumentException>(() => CatchAudit.Of(new(One, double.NaN, [1, 1, 1, 1])));
        Assert.Throws<ArgumentException>(() => CatchAudit.Of(new(One, 10, [1, 1, 1, -1])));
        Assert.Throws<ArgumentException>(() => CatchAudit.Of(new(One, 10, [1, 1, 1, double.NaN])));
        Assert.Throws<ArgumentException>(() => CatchAudit.Of(new(One, 10, [0, 0, 0, 0])));
    }

    /// <summary>The station is described with 10 mm/h.</summary>
    [Theory]
    [InlineData(20, 10.0, 2.2, "")]
    [InlineData(19, 10.0, 2.2, "FewCups")]
    [InlineData(20, 10.0, 2.2352, "")]
    [InlineData(20, 10.0, 2.24, "Windy")]
    [InlineData(20, 10.0, null, "WindUnknown")]
    [InlineData(20, 12.5, 0.0, "")]
    [InlineData(20, 12.6, 0.0, "RateDiffers")]
    [InlineData(20, 7.5, 0.0, "")]
    [InlineData(20, 7.4, 0.0, "RateDiffers")]
    public void Remarks_begin_just_beyond_their_limits(int cups, double rateMmPerHour, double? wind, string expected)
    {
        var audit = Assert.Single(StationAudit.Of([new(One, 60, [.. Enumerable.Repeat(rateMmPerHour, cups)], wind)]));
        Assert.Equal(expected, string.Join(' ', audit.Remarks));
        Assert.True(audit.IsSound);
    }

    [Fact]
    public void Uneven_water_is_said_and_a_dry_quarter_is_not_sound()
    {
        double[] poor = [.. Enumerable.Repeat(5.0, 5), .. Enumerable.Repeat(35.0 / 3, 15)];
        var uneven = Assert.Single(StationAudit.Of([new(One, 60, poor, 0)]));
        Assert.Equal([AuditRemark.Uneven], uneven.Remarks);
        Assert.True(uneven.IsSound);

        double[] dry = [.. Enumerable.Repeat(0.0, 5), .. Enumerable.Repeat(40.0 / 3, 15)];
        var none = Assert.Single(StationAudit.Of([new(One, 60, dry, 0)]));
        Assert.Equal([AuditRemark.DryQuarter], none.Remarks);
        Assert.False(none.IsSound);
    }

    [Fact]
    public void Stations_of_the_same_ground_get_its_rate()
    {
        // Each ran an hour; the cups caught 10 mm of both together.
        var audits = StationAudit.Of([new([SmallCourse.Station(1), SmallCourse.Station(2)], 60, [.. Enumerable.Repeat(10.0, 20)], 0)]);
        Assert.Equal(["1", "2"], audits.Select(a => a.Station.Key.Station));
        Assert.All(audits, a => Assert.Equal(10, a.Audit.RateMmPerHour, 1e-12));
        Assert.All(audits, a => Assert.Equal([AuditRemark.Together], a.Remarks));
    }

    /// <summary>Four cups, the lowest of which is the given share of their mean.</summary>
    private static double[] WithUniformity(double uniformity) => [uniformity, (4 - uniformity) / 3, (4 - uniformity) / 3, (4 - uniformity) / 3];
}
