using System.Globalization;
using DailyAdjust.ServiceTests.Fallback;
using Xunit;

namespace DailyAdjust.ServiceTests.Orders;

/// <summary>A grow-in that is ordered before it begins, through the real program.</summary>
public class GrowInAheadTests
{
    [Fact]
    public void Tonights_start_that_it_takes_is_nobodys_to_decide_about()
    {
        using var home = new FallbackHome();
        home.Drop("yard-2026.csv", ExampleSite.WeatherUntil("2026-06-10 05:00"));
        home.Run("ingest", Path.Combine(home.Site.Inbox, "yard-2026.csv"));
        string At(string utc, params string[] arguments)
        {
            var result = InProcess.Run(new FixedTime(DateTimeOffset.Parse(utc, CultureInfo.InvariantCulture)), [.. arguments, "--home", Path.GetDirectoryName(Path.GetDirectoryName(home.Site.Path))!]);
            return result.ExitCode == 0 ? result.Output : throw new InvalidOperationException(result.ToString());
        }

        (string Advice, double? Exact) P1()
        {
            var rows = CsvRows.Of(At("2026-06-10T10:00:00Z", "advice", "--date", "2026-06-10", "--format", "csv"));
            var row = rows.Rows.Single(r => rows.Text(r, "controller") is "C1" && rows.Text(r, "program") is "P1");
            return (rows.Text(row, "advice"), rows.Number(row, "exact_percent"));
        }

        Assert.True(P1().Exact > 0, P1().ToString());

        // Six starts a day from 15:00 of the 10th on, in the place of the one at night.
        At("2026-06-09T15:00:00Z", "log", "grow-in", "C1/P1", "6 x 4 min", "--date", "2026-06-10", "--time", "15:00", "--until", "2026-06-20", "--note", "sod");
        Assert.Equal(("leave", null), P1());
        Assert.Contains("no start before the next visit (0 starts)", At("2026-06-10T10:00:00Z", "explain", "C1/P1", "--date", "2026-06-10"), StringComparison.Ordinal);
    }

    private sealed class FixedTime(DateTimeOffset now) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => now;
    }
}
