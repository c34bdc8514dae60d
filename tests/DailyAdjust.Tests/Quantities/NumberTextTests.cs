using System.Globalization;
using DailyAdjust.Core.Quantities;
using Xunit;

namespace DailyAdjust.Tests.Quantities;

public class NumberTextTests
{
    /// <summary>The short way for plain numbers gives the nearest double, as the general one does, wherever the point stands.</summary>
    [Theory]
    [InlineData("1")]
    [InlineData("30")]
    [InlineData("123456789012345")]
    [InlineData("999999999999999")]
    [InlineData("1234567890123456")] // a digit too many for the short way
    public void A_number_is_read_to_the_last_bit_wherever_its_point_stands(string digits)
    {
        for (var at = 0; at <= digits.Length; at++)
        {
            foreach (var text in new[] { digits.Insert(at, "."), "-" + digits.Insert(at, ".") })
            {
                Assert.True(NumberText.TryParse(text, out var value), text);
                Assert.Equal(double.Parse(text, CultureInfo.InvariantCulture), value);
            }
        }
    }

    [Theory]
    [InlineData("0.000001", 1e-6)]
    [InlineData("1.234567", 1.234567)]
    [InlineData(" 2.5 ", 2.5)]
    [InlineData("+2.5", 2.5)]
    [InlineData("1e3", 1000)]
    public void What_people_and_instruments_write_is_a_number(string text, double number)
    {
        Assert.True(NumberText.TryParse(text, out var value));
        Assert.Equal(number, value);
    }

    [Theory]
    [InlineData("")]
    [InlineData(".")]
    [InlineData("-")]
    [InlineData("-.")]
    [InlineData("1.2.3")]
    [InlineData("1,5")]
    [InlineData("1e999")]
    [InlineData("NaN")]
    [InlineData("Infinity")]
    public void Anything_else_is_none(string text) => Assert.False(NumberText.TryParse(text, out _));

    [Theory]
    [InlineData("1,5", true)]
    [InlineData("1,500,000", false)]
    [InlineData("1,500.5", false)]
    [InlineData("15", false)]
    [InlineData("1,x", false)]
    public void A_decimal_comma_is_known_as_one(string text, bool isOne) => Assert.Equal(isOne, NumberText.LooksLikeDecimalComma(text));
}
