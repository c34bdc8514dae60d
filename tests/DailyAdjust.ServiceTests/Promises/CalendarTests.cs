using Xunit;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>The service runs over a leap day and over a year's end: a sheet each day, and the programs' own calendars go on as a box counts them.</summary>
[Trait("Promise", "5")]
public sealed class CalendarTests : IDisposable
{
    private static readonly DateOnly Start = new(2024, 2, 20);

    private readonly TestHome _home = new();

    public CalendarTests() => Tool.Need("gcc");

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Leap_day_and_years_end_have_a_sheet_each_and_starts_on_the_days_that_a_box_would_count()
    {
        var site = ZoneSite.PutInto(_home, "America/Chicago", Start, "\"05:00\"");
        var begin = new DateTimeOffset(2024, 2, 19, 0, 0, 0, TimeSpan.Zero);
        Served.Drop(site, "yard-2024.csv", ZoneSite.Weather("America/Chicago", begin, begin.AddDays(330)));
        DateOnly[] dates = [new(2024, 2, 28), new(2024, 2, 29), new(2024, 3, 1), new(2024, 12, 30), new(2024, 12, 31), new(2025, 1, 1), new(2025, 1, 2)];
        using var clock = new MovedClock(Work(dates[0]));
        using var service = new Served(_home, clock.Variables);
        foreach (var date in dates)
        {
            clock.Set(Work(date));
            Served.WaitFor($"the sheet of {date:yyyy-MM-dd}", () => Served.IsOut(site, date));
        }

        service.Stop();

        // Rough, every third day from 20 February; fairways on odd dates: twice running at the turn of a month or year that ends on one.
        Assert.Equal(["2024-02-29", "2024-02-29", "2024-03-03", "2024-12-31", "2024-12-31", "2025-01-03", "2025-01-03"], dates.Select(d => NextStart(d, "C1", "P3")));
        Assert.Equal(["2024-02-29", "2024-02-29", "2024-03-01", "2024-12-31", "2024-12-31", "2025-01-01", "2025-01-03"], dates.Select(d => NextStart(d, "C2", "P1")));
        Assert.Equal(["2024-02-28", "2024-02-29", "2024-03-01"], Days("weather", "2024-02-28", "2024-03-01"));
        Assert.Equal(["2024-12-30", "2024-12-31", "2025-01-01"], Days("weather", "2024-12-30", "2025-01-01"));
        Assert.Equal(["2024-02-28", "2024-02-29", "2024-03-01"], Days("balance", "2024-02-28", "2024-03-01"));
        Assert.Equal(["2024-12-30", "2024-12-31", "2025-01-01"], Days("balance", "2024-12-30", "2025-01-01"));
        var mornings = Served.Mornings(site);
        Assert.Equal(Enumerable.Range(0, mornings.Count).Select(dates[0].AddDays), mornings.Select(m => m.Date));
        Tried.Held(5, "mornings about leap day and year's end", dates.Length);

        string NextStart(DateOnly date, string controller, string program)
        {
            var rows = CsvRows.Of(File.ReadAllText(Path.Combine(site.ReportFolder(date), "advice.csv")));
            return rows.Text(rows.Rows.Single(r => r[1..3] is [var c, var p] && string.Equals(c + p, controller + program, StringComparison.Ordinal)), "next_start")[..10];
        }
    }

    /// <summary>04:51 on the site's clock, in winter.</summary>
    private static DateTimeOffset Work(DateOnly date) => new DateTimeOffset(date, new TimeOnly(4, 51), TimeSpan.FromHours(-6)).ToUniversalTime();

    private IEnumerable<string> Days(string command, string from, string to)
    {
        var printed = RunningProgram.Run(command, "--home", _home.Path, "--from", from, "--to", to, "--format", "csv");
        Assert.True(printed.ExitCode == 0, printed.ToString());
        var rows = CsvRows.Of(printed.Output).Rows;

        // Every station once a day.
        Assert.Single(rows.GroupBy(r => r[0], StringComparer.Ordinal).Select(g => g.Count()).Distinct());
        return rows.Select(r => r[0]).Distinct(StringComparer.Ordinal);
    }
}
