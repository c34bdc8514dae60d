using System.Globalization;
using DailyAdjust.Ledger.Records;
using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>
/// One service over seven courses through a year of clock changes: whole and half hours, northern and southern summers, changes at midnight, and a zone without any. The report hours lie
/// in the hour that is skipped, and in the one that comes twice.
/// </summary>
[Trait("Promise", "5")]
public sealed class ZoneDaysTests : IDisposable
{
    private const string Without = "America/Phoenix";

    private static readonly DateOnly Start = new(2025, 3, 1);

    /// <summary>Of 2025, with the instant of the report hour on that date. Source: the IANA time-zone data, read by another program (Python's zoneinfo).</summary>
    private static readonly Change[] Changes =
    [
        new("America/Chicago", "2025-03-09", "02:30", "2025-03-09T08:00Z", 46),
        new("America/Chicago", "2025-11-02", "01:30", "2025-11-02T06:30Z", 50),
        new("Europe/Berlin", "2025-03-30", "02:30", "2025-03-30T01:00Z", 46),
        new("Europe/Berlin", "2025-10-26", "02:30", "2025-10-26T00:30Z", 50),
        new("Australia/Lord_Howe", "2025-04-06", "01:45", "2025-04-05T14:45Z", 49),
        new("Australia/Lord_Howe", "2025-10-05", "02:15", "2025-10-04T15:30Z", 47),
        new("Pacific/Auckland", "2025-04-06", "02:30", "2025-04-05T13:30Z", 50),
        new("Pacific/Auckland", "2025-09-28", "02:30", "2025-09-27T14:00Z", 46),
        new("America/Santiago", "2025-04-05", "23:30", "2025-04-06T02:30Z", 50),
        new("America/Santiago", "2025-09-07", "00:30", "2025-09-07T04:00Z", 46),
        new("Asia/Beirut", "2025-03-30", "00:30", "2025-03-29T22:00Z", 46),
        new("Asia/Beirut", "2025-10-25", "23:30", "2025-10-25T20:30Z", 50),
    ];

    private readonly TestHome _home = new();

    public ZoneDaysTests() => Tool.Need("gcc");

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Every_days_sheet_comes_once_at_its_hour_and_every_day_has_the_hours_of_its_clock()
    {
        var changes = Tried.Times(0, 1) == 1 ? Changes : [.. Changes.Where(c => c.Zone is "America/Chicago" or "Australia/Lord_Howe" or "America/Santiago")];
        var sites = changes.GroupBy(c => c.Zone, StringComparer.Ordinal).ToDictionary(
            g => g.Key,
            g => ZoneSite.PutInto(_home, g.Key, Start, "[" + string.Join(", ", g.Select(c => c.At).Distinct().Order(StringComparer.Ordinal).Select(at => $"\"{at}\"")) + "]"),
            StringComparer.Ordinal);
        sites[Without] = ZoneSite.PutInto(_home, Without, Start, "\"05:00\"");
        var begin = new DateTimeOffset(2025, 2, 28, 0, 0, 0, TimeSpan.Zero);
        foreach (var (zone, site) in sites)
        {
            Served.Drop(site, "yard-2025.csv", ZoneSite.Weather(zone, begin, begin.AddDays(260)));
        }

        var days = Tried.Times(0, 3);
        var steps = changes.SelectMany(c => Enumerable.Range(-days, (2 * days) + 1).Select(c.Step)).OrderBy(s => s.Instant).ToList();
        using var clock = new MovedClock(steps[0].Instant.AddHours(-30));
        using var service = new Served(_home, clock.Variables);
        foreach (var step in steps)
        {
            clock.Set(step.Instant.AddMinutes(-6));
            Served.WaitFor($"{step}", () => IsIssued(sites[step.Zone], step));
            if (step.ComesTwice)
            {
                clock.Set(step.Instant.AddMinutes(sites[step.Zone].Name is "lord_howe" ? 35 : 65));
                service.LetItLook(sites[step.Zone]);
            }
        }

        clock.Set(begin.AddDays(259));
        service.LetItLook(sites[Without]);
        service.Stop();
        foreach (var (zone, site) in sites)
        {
            OnceEach(site, zone);
        }

        foreach (var change in changes)
        {
            Assert.Equal([(change.Date.AddDays(-1), 4.8), (change.Date, change.HalfHours / 10.0), (change.Date.AddDays(1), 4.8)], Rain(sites[change.Zone], change.Date));
        }

        Assert.All(changes, change => Assert.Equal([4.8, 4.8, 4.8], Rain(sites[Without], change.Date).Select(r => r.Mm)));
        Tried.Held(5, "mornings about a clock change", steps.Count);
    }

    private static bool IsIssued(SiteFolder site, Step step) =>
        Served.Mornings(site).Any(m => m.Date == step.Date && m.AsOf == step.Instant && m.Step == MorningStep.Written);

    /// <summary>No date is left out, no report time has two sheets, and each sheet is as of one of its date's.</summary>
    private static void OnceEach(SiteFolder site, string zone)
    {
        var info = TimeZoneInfo.FindSystemTimeZoneById(zone);
        var mornings = Served.Mornings(site);
        var dates = mornings.Select(m => m.Date).Distinct().ToList();
        Assert.Equal(Enumerable.Range(0, dates.Count).Select(dates[0].AddDays), dates);
        var issued = mornings.Where(m => m.Step != MorningStep.Missed).ToList();
        Assert.All(issued, m => Assert.Equal(MorningStep.Written, m.Step));
        Assert.Equal(issued.Count, issued.Select(m => (m.Date, m.AsOf)).Distinct().Count());
        Assert.All(issued, m => Assert.Equal(m.Date, DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(m.AsOf, info).DateTime)));
    }

    private IReadOnlyList<(DateOnly Date, double Mm)> Rain(SiteFolder site, DateOnly date)
    {
        var printed = RunningProgram.Run("weather", "--home", _home.Path, "--site", site.Name, "--from", Text(date.AddDays(-1)), "--to", Text(date.AddDays(1)), "--format", "csv");
        Assert.True(printed.ExitCode == 0, printed.ToString());
        var rows = CsvRows.Of(printed.Output);
        return [.. rows.Rows.Select(row => (DateOnly.ParseExact(row[0], "yyyy-MM-dd", CultureInfo.InvariantCulture), Math.Round(rows.Number(row, "rain_mm")!.Value, 6)))];
    }

    private static string Text(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>A date on which the clock is changed.</summary>
    /// <param name="At">A report hour that is skipped on it, or comes twice.</param>
    /// <param name="Utc">Its instant on that date.</param>
    /// <param name="HalfHours">How many the date has.</param>
    private sealed record Change(string Zone, string Day, string At, string Utc, int HalfHours)
    {
        public DateOnly Date => DateOnly.ParseExact(Day, "yyyy-MM-dd", CultureInfo.InvariantCulture);

        /// <summary>The report hour so many days later.</summary>
        public Step Step(int days)
        {
            if (days == 0)
            {
                return new(Zone, Date, DateTimeOffset.Parse(Utc, CultureInfo.InvariantCulture), HalfHours > 48);
            }

            var local = Date.AddDays(days).ToDateTime(TimeOnly.ParseExact(At, "HH:mm", CultureInfo.InvariantCulture));
            return new(Zone, Date.AddDays(days), new DateTimeOffset(local, TimeZoneInfo.FindSystemTimeZoneById(Zone).GetUtcOffset(local)).ToUniversalTime(), ComesTwice: false);
        }
    }

    private sealed record Step(string Zone, DateOnly Date, DateTimeOffset Instant, bool ComesTwice);
}
