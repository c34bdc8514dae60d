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
            Assert.Null(FirstDifference("example", ExampleInputs.Morning(date)));
        }
    }

    [Fact]
    public void Random_mornings_come_out_as_the_plain_advice_says()
    {
        var found = Enumerable.Range(1, Sites)
            .Select(seed => (seed, site: RandomCase.Of(seed)))
            .SelectMany(x => new[] { 1, 3 }.Select(back => FirstDifference($"seed {x.seed}", x.site.Morning(x.site.Weather[^back].Date))))
            .OfType<string>()
            .ToList();
        Assert.True(found.Count == 0, $"{found.Count} mornings differ:\n" + string.Join('\n', found.Take(12)));
    }

    /// <summary>The same advice and percent; exact percent and each zone's within 0.1.</summary>
    private static string? FirstDifference(string name, MorningInputs inputs)
    {
        var plain = PlainAdvice.Run(inputs);
        var core = MorningCalculation.Run(inputs).Programs;
        Assert.Equal(plain.Select(p => p.Key), core.Select(c => c.Key));
        foreach (var (p, c) in plain.Zip(core))
        {
            var where = string.Create(CultureInfo.InvariantCulture, $"{name} {inputs.Date:yyyy-MM-dd} {p.Key}");
            foreach (var slow in p.Zones)
            {
                var fast = c.Zones.Single(z => z.Station == slow.Station.Key);
                if (!Near(slow.Percent, fast.Percent) || slow.CanWait != fast.CanWait || slow.Due != fast.Due || p.SetAside.Contains(slow) != fast.SetAside)
                {
                    return $"{where} {fast.Station}: plain {slow.Percent} wait {slow.CanWait} due {slow.Due} aside {p.SetAside.Contains(slow)}, "
                        + $"core {fast.Percent} wait {fast.CanWait} due {fast.Due} aside {fast.SetAside}";
                }
            }

            if (!Near(p.ExactPercent, c.ExactPercent) || (p.Present, p.Advice, p.Percent) != (c.Present, c.Advice, c.Percent))
            {
                return $"{where}: plain {p.Present} {p.Advice} {p.Percent} ({p.ExactPercent}), core {c.Present} {c.Advice} {c.Percent} ({c.ExactPercent})";
            }
        }

        return null;
    }

    private static bool Near(double? slow, double? fast) => slow is { } s && fast is { } f ? Math.Abs(s - f) <= 0.1 : slow is null && fast is null;
}
