using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Quantities;

/// <summary>Depths as they are read: one rounding, the same on every machine.</summary>
public sealed class DepthWordsTests
{
    [Theory]
    [InlineData(UnitSystem.Us, 16.256, "0.64 in")]
    [InlineData(UnitSystem.Us, 12.065, "0.48 in")]
    [InlineData(UnitSystem.Us, 12.064999999999998, "0.48 in")]
    [InlineData(UnitSystem.Us, 12.064, "0.47 in")]
    [InlineData(UnitSystem.Us, 0.126, "under 0.01 in")]
    [InlineData(UnitSystem.Us, 0, "0.00 in")]
    [InlineData(UnitSystem.Us, -0.01, "0.00 in")]
    [InlineData(UnitSystem.Metric, 12.65, "12.7 mm")]
    [InlineData(UnitSystem.Metric, 12.649999999999999, "12.7 mm")]
    [InlineData(UnitSystem.Metric, 0.04, "under 0.1 mm")]
    public void Halves_go_up_and_a_trace_is_not_none(UnitSystem units, double mm, string read) => Assert.Equal(read, DepthWords.Of(units, mm).In(Language.English));
}
