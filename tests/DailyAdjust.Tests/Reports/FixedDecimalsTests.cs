using System.Globalization;
using CsCheck;
using DailyAdjust.Reports.Tables;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>Our digits of a number with fixed decimals are the library's, or none.</summary>
public sealed class FixedDecimalsTests
{
    private static readonly Gen<double> Numbers = Gen.OneOf(
        Gen.Double[-50, 50],
        Gen.Double[-1e-3, 1e-3],
        Gen.Double[-2e9, 2e9],
        Gen.Double,
        Gen.Long[-2_000_000, 2_000_000].Select(n => n / 10_000.0),
        Gen.Long[-2_000_000, 2_000_000].Select(n => (n + 0.5) / 10_000),
        Gen.Long[-2_000_000, 2_000_000].Select(n => Math.BitIncrement((n + 0.5) / 10_000)),
        Gen.Long[-2_000_000, 2_000_000].Select(n => n / 64.0));

    [Fact]
    public void Every_digit_is_the_librarys() =>
        Gen.Select(Numbers, Gen.Int[0, 8]).Sample(
            (number, decimals) => Assert.Equal(ByLibrary(number, decimals), DailyAdjust.Reports.Tables.Plain.Fixed(number, decimals)),
            iter: 200_000);

    [Theory]
    [InlineData(0.00005, 4)]
    [InlineData(2.5, 0)]
    [InlineData(0.125, 2)]
    [InlineData(1e9, 0)]
    [InlineData(1, 7)]
    [InlineData(double.NaN, 4)]
    [InlineData(double.NegativeInfinity, 4)]
    public void Where_the_last_digit_is_not_certain_nothing_is_written(double number, int decimals)
    {
        Span<char> into = stackalloc char[FixedDecimals.Longest];
        Assert.Equal(0, FixedDecimals.Write(number, decimals, into));
    }

    [Theory]
    [InlineData(-0.00001, 4, "0.0000")]
    [InlineData(-0.0, 2, "0.00")]
    [InlineData(-999.99996, 4, "-1000.0000")]
    [InlineData(99999.99999, 4, "100000.0000")]
    [InlineData(-999.999999, 6, "-999.999999")]
    [InlineData(7, 0, "7")]
    public void Certain_ones_are_written_and_never_as_minus_nothing(double number, int decimals, string expected)
    {
        Span<char> into = stackalloc char[FixedDecimals.Longest];
        Assert.Equal(expected, into[..FixedDecimals.Write(number, decimals, into)].ToString());
    }

    private static string ByLibrary(double number, int decimals)
    {
        var written = number.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return written.StartsWith('-') && written.All(c => c is '-' or '0' or '.') ? written[1..] : written;
    }
}
