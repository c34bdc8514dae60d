using DailyAdjust.Core.Advice;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>The search against plain halving, on what is missing in ways that ground can miss water: straight lines, bends, steps, levels.</summary>
public class PercentSearchTests
{
    private const int Shapes = 2000;

    [Fact]
    public void It_finds_what_halving_finds()
    {
        int found = 0, never = 0, looks = 0;
        for (var seed = 1; seed <= Shapes; seed++)
        {
            var lack = Shape(new Dice((ulong)seed));
            var quick = PercentSearch.Smallest(p =>
            {
                looks++;
                return lack(p);
            });
            Assert.Equal(Halving(lack), quick);
            found += quick > 0 ? 1 : 0;
            never += quick is null ? 1 : 0;
        }

        Assert.True(found > Shapes / 2 && never > 20, $"{found} found, {never} never enough");
        Assert.True(looks < 20 * Shapes, $"{looks / (double)Shapes:0.0} looks each, of 32 by halving");
    }

    [Fact]
    public void Where_only_the_most_is_enough_it_is_found() => Assert.Equal(1000, PercentSearch.Smallest(p => p < 1000 ? 1 : 0));

    /// <summary>Never grows: a level, up to four bends or steps down, an end at which no more helps.</summary>
    private static Func<double, double> Shape(Dice dice)
    {
        var start = dice.Between(-2, 40);
        var end = dice.Chance(0.1) ? dice.Between(0, 5) : -dice.Between(0, 20);
        var bends = Enumerable.Range(0, dice.Whole(1, 4)).Select(_ => (At: dice.Between(0, 400), Slope: dice.Between(0.001, 0.5), Step: dice.Chance(0.2) ? dice.Between(0, 3) : 0)).ToList();
        return p => Math.Max(end, start - bends.Sum(b => p > b.At ? b.Step + (b.Slope * (p - b.At)) : 0));
    }

    private static double? Halving(Func<double, double> lack)
    {
        if (lack(0) <= 0)
        {
            return 0;
        }

        double tooLittle = 0, plenty = 1000;
        if (lack(plenty) > 0)
        {
            return null;
        }

        while (plenty - tooLittle > 1e-6)
        {
            var middle = (tooLittle + plenty) / 2;
            (tooLittle, plenty) = lack(middle) <= 0 ? (tooLittle, middle) : (middle, plenty);
        }

        return plenty;
    }
}
