using System.Globalization;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Weather;
using Xunit;

namespace DailyAdjust.Tests.Sites;

/// <summary>
/// Times of day on dates on which clocks are moved, against Python's zoneinfo: at night, at midnight, into the day before, by half an hour, for Ramadan, with a summer
/// time that is the standard one (Dublin, Casablanca), a date that never was, and none at all.
/// </summary>
public sealed class SiteClockTests
{
    private static readonly IReadOnlyList<IReadOnlyDictionary<string, string>> Rows = CheckTable.Read("Outside/zoneinfo/times-of-day.csv");

    public static TheoryData<string> Zones { get; } = [.. Rows.Select(r => r["zone"]).Distinct(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Zones))]
    public void A_time_of_day_comes_when_zoneinfo_says(string zone)
    {
        var clock = new SiteClock(TimeZoneInfo.FindSystemTimeZoneById(zone));
        var looked = 0;
        foreach (var row in Rows.Where(r => string.Equals(r["zone"], zone, StringComparison.Ordinal)))
        {
            var local = Time(row["local"]);
            DateTimeOffset utc = new(Time(row["utc"]), TimeSpan.Zero);
            var all = clock.AllInstants(local);
            Assert.Equal(row["local"] + " " + Text(utc), row["local"] + " " + Text(clock.ToInstant(DateOnly.FromDateTime(local), TimeOnly.FromDateTime(local))));
            Assert.Equal(utc, all[0]);
            Assert.Equal(row["comes"] is "twice" ? 2 : 1, all.Count);
            Assert.Equal(row["comes"] is "never", clock.IsSkipped(local));
            Assert.All(all, at => Assert.True(clock.ToLocal(at).DateTime == local || row["comes"] is "never", Text(at)));
            looked++;
        }

        Assert.True(looked >= 48, $"{looked} times");
    }

    [Theory]
    [InlineData("Europe/Dublin", "2026-03-29", "2026-03-29T01:00", 60)]
    [InlineData("Europe/Dublin", "2026-10-25", "2026-10-25T01:00", -60)]
    [InlineData("Australia/Lord_Howe", "2026-04-05", "2026-04-04T15:00", -30)]
    public void A_change_is_found_to_the_minute(string zone, string date, string at, int minutes)
    {
        var clock = new SiteClock(TimeZoneInfo.FindSystemTimeZoneById(zone));
        var day = DateOnly.FromDateTime(DateTime.Parse(date, CultureInfo.InvariantCulture));
        Assert.Equal((new DateTimeOffset(Time(at), TimeSpan.Zero), TimeSpan.FromMinutes(minutes)), clock.ChangeOn(day));
        Assert.Null(clock.ChangeOn(day.AddDays(1)));
    }

    [Fact]
    public void The_first_and_the_last_day_of_the_calendar_have_times_too()
    {
        var clock = new SiteClock(TimeZoneInfo.FindSystemTimeZoneById("Etc/UTC"));
        Assert.Equal(DateTimeOffset.MinValue.AddHours(1), clock.ToInstant(DateOnly.MinValue, new(1, 0)));
        Assert.Equal(23, clock.ToInstant(DateOnly.MaxValue, new(23, 0)).Hour);
    }

    private static DateTime Time(string text) => DateTime.ParseExact(text, "yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture);

    private static string Text(DateTimeOffset at) => at.ToString("yyyy-MM-dd'T'HH:mmzzz", CultureInfo.InvariantCulture);
}
