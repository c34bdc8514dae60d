using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Irrigation;

public class BalanceOfExampleSiteTests
{
    [Fact]
    public void The_balance_of_the_example_site_is_that_of_an_independent_program()
    {
        var site = ExampleSite.Build();
        var days = Balance.Run(new BalanceInputs
        {
            Versions = [new SiteVersion(site.Start, site)],
            Weather = ExampleInputs.Weather(),
            Log = ExampleInputs.Log(),
        }).Days;

        var rows = ExampleInputs.Rows("expected-balance.csv").ToList();
        Assert.Equal(rows.Count, days.Count);
        foreach (var (row, day) in rows.Zip(days))
        {
            var where = $"{day.Date:yyyy-MM-dd},{day.Station.Controller},{day.Station.Station},{day.Area}";
            Assert.Equal(string.Join(',', row[..4]), where);
            double[] values =
            [
                day.EtoMm, day.K, day.Ks, day.EtcMm, day.RainMm!.Value, day.InterceptedMm, day.RunoffMm, day.IrrigationMm, day.HoseMm,
                day.DrainageMm, day.ProbeMm, day.DepletionMm, day.RawMm, day.TawMm,
            ];
            for (var i = 0; i < values.Length; i++)
            {
                var expected = ExampleInputs.Number(row[4 + i]);
                Assert.True(Math.Abs(expected - values[i]) <= 0.002, $"{where} column {i}: expected {expected}, got {values[i]}");
            }
        }
    }
}
