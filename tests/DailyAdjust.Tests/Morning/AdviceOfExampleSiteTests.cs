using System.Globalization;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Morning;

public class AdviceOfExampleSiteTests
{
    [Theory]
    [MemberData(nameof(Mornings))]
    public void The_advice_of_the_example_site_is_that_of_an_independent_program(string date)
    {
        var rows = ExampleInputs.Rows("expected-advice.csv").Where(r => r[0].Is(date)).ToList();
        var advice = MorningCalculation.Run(ExampleInputs.Morning(DateOnly.ParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture))).Programs;
        Assert.Equal(5, rows.Count);
        Assert.Equal(rows.Count, advice.Count);
        foreach (var (row, line) in rows.Zip(advice))
        {
            var got = string.Create(CultureInfo.InvariantCulture, $"{date},{line.Key.Controller},{line.Key.Program},{line.Present.Percent},{Word(line.Advice)},{line.Percent}");
            Assert.Equal(string.Join(',', row[..6]), got);
            if (row[6].Length == 0)
            {
                Assert.Null(line.ExactPercent);
            }
            else
            {
                var expected = ExampleInputs.Number(row[6]);
                Assert.True(Math.Abs(line.ExactPercent!.Value - expected) <= 0.01, $"{got}: expected {expected}, got {line.ExactPercent}");
            }
        }
    }

    public static TheoryData<string> Mornings() =>
        [.. Enumerable.Range(5, 13).Select(day => new DateOnly(2026, 6, day).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture))];

    private static string Word(AdviceKind kind) => kind switch
    {
        AdviceKind.KeepOff => "keep-off",
        AdviceKind.AsSet => "as-set",
        _ => kind.ToString().ToLowerInvariant(),
    };
}
