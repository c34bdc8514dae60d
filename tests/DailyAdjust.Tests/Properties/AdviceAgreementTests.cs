using System.Globalization;
using DailyAdjust.Core.Morning;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Properties;

/// <summary>The morning against a second, plain implementation, on the example site and on random sites.</summary>
public class AdviceAgreementTests
{
    private const int Sites = 120;

    [Fact]
    public void The_example_mornings_come_out_as_the_plain_advice_says()
    {
        for (var date = new DateOnly(2026, 6, 5); date <= ExampleInputs.Last; date = date.AddDays(1))
        {
            Agree("example", ExampleInputs.Morning(date));
        }
    }

    [Fact]
    public void Random_mornings_come_out_as_the_plain_advice_says()
    {
        for (var seed = 1; seed <= Sites; seed++)
        {
            var site = RandomCase.Of(seed);
            Agree($"seed {seed}", site.Morning(site.Weather[^1].Date));
            Agree($"seed {seed}", site.Morning(site.Weather[^3].Date));
        }
    }

    /// <summary>The same advice and percent; exact percent and each zone's within 0.1.</summary>
    private static void Agree(string name, MorningInputs inputs)
    {
        var plain = PlainAdvice.Run(inputs);
        var core = MorningCalculation.Run(inputs).Programs;
        Assert.Equal(plain.Select(p => p.Key), core.Select(c => c.Key));
        foreach (var (p, c) in plain.Zip(core))
        {
            var where = string.Create(CultureInfo.InvariantCulture, $"{name} {inputs.Date:yyyy-MM-dd} {p.Key}: ");
            foreach (var (slow, fast) in p.Zones.Zip(c.Zones))
            {
                Assert.Equal((where, slow.Station.Key), (where, fast.Station));
                Near($"{where}{fast.Station} percent", slow.Percent, fast.Percent);
                Assert.Equal((where, fast.Station, slow.CanWait, slow.Due), (where, fast.Station, fast.CanWait, fast.Due));
                Assert.Equal((where, fast.Station, p.SetAside.Contains(slow)), (where, fast.Station, fast.SetAside));
            }

            Near(where + "exact", p.ExactPercent, c.ExactPercent);
            Assert.Equal((where, p.Present, p.Advice, p.Percent), (where, c.Present, c.Advice, c.Percent));
        }
    }

    private static void Near(string what, double? slow, double? fast) =>
        Assert.True(slow is null ? fast is null : Math.Abs(slow.Value - fast!.Value) <= 0.1, $"{what}: plain {slow}, core {fast}");
}
