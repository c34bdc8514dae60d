using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Properties;

/// <summary>The balance against a second, plain implementation, on the example site and on random sites.</summary>
public class BalanceAgreementTests
{
    private const int Sites = 400;

    [Fact]
    public void The_example_site_comes_out_as_the_plain_balance_says()
    {
        var site = ExampleSite.Build();
        Assert.Null(FirstDifference("example", new BalanceInputs { Versions = [new SiteVersion(site.Start, site)], Weather = ExampleInputs.Weather(), Log = ExampleInputs.Log() }));
    }

    [Fact]
    public void Random_sites_come_out_as_the_plain_balance_says()
    {
        var found = Enumerable.Range(1, Sites).Select(seed => FirstDifference($"seed {seed}", RandomCase.Of(seed).Balance)).OfType<string>().ToList();
        Assert.True(found.Count == 0, $"{found.Count} sites differ:\n" + string.Join('\n', found.Take(12)));
    }

    /// <summary>Every column within a millionth of a millimetre.</summary>
    private static string? FirstDifference(string name, BalanceInputs inputs)
    {
        var plain = PlainBalance.Run(inputs);
        var core = Balance.Run(inputs).Days;
        Assert.Equal(plain.Count, core.Count);
        foreach (var (p, c) in plain.Zip(core))
        {
            Assert.Equal((p.Date, p.Station, p.Area, p.RainMm), (c.Date, c.Station, c.Area, c.RainMm));
            (string Column, double Plain, double Core)[] columns =
            [
                ("k", p.K, c.K),
                ("rain", p.RainMm ?? 0, c.RainMm ?? 0),
                ("intercepted", p.InterceptedMm, c.InterceptedMm),
                ("runoff", p.RunoffMm, c.RunoffMm),
                ("irrigation", p.IrrigationMm, c.IrrigationMm),
                ("hose", p.HoseMm, c.HoseMm),
                ("probe", p.ProbeMm, c.ProbeMm),
                ("etc", p.EtcMm, c.EtcMm),
                ("ks", p.Ks, c.Ks),
                ("drainage", p.DrainageMm, c.DrainageMm),
                ("depletion before", p.DepletionBeforeMm, c.DepletionBeforeMm),
                ("depletion", p.DepletionMm, c.DepletionMm),
                ("raw", p.RawMm, c.RawMm),
                ("taw", p.TawMm, c.TawMm),
            ];
            foreach (var (column, slow, fast) in columns)
            {
                if (!(Math.Abs(slow - fast) <= 1e-6))
                {
                    return $"{name} {c.Date:yyyy-MM-dd} {c.Station} {column}: plain {slow}, core {fast}";
                }
            }
        }

        return null;
    }
}
