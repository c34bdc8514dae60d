using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Sites;
using DailyAdjust.Service.Sites;
using Xunit;

namespace DailyAdjust.ServiceTests.Sites;

/// <summary>What is due and not done, on clocks of all kinds.</summary>
[Trait("Promise", "5")]
public sealed class MorningPlanTests
{
    private static readonly TimeSpan TenMinutes = TimeSpan.FromMinutes(10);

    [Fact]
    public void Nothing_is_due_before_work_begins_and_today_is_from_then_on()
    {
        var site = Site("America/Chicago", "\"05:00\"");
        Assert.Null(Plan(site, Date(9), Sheet(9, site), Local(site, 10, "04:49")).Issue);
        Assert.Equal(Date(10), Plan(site, Date(9), Sheet(9, site), Local(site, 10, "04:50")).Issue?.Date);
    }

    [Fact]
    public void A_sheet_made_by_hand_at_night_does_not_stand_for_the_mornings()
    {
        var site = Site("America/Chicago", "\"05:00\"");
        var atNight = new IssuedSheet(Date(10), 1, Local(site, 10, "02:00"), []);
        Assert.Equal(Date(10), Plan(site, Date(10), atNight, Local(site, 10, "04:55")).Issue?.Date);
    }

    [Fact]
    public void Slept_over_two_mornings_both_are_missed_and_todays_is_issued()
    {
        var site = Site("America/Chicago", "\"05:00\"");
        var plan = Plan(site, Date(9), Sheet(9, site), Local(site, 12, "08:00"));
        Assert.Equal([Date(10), Date(11)], plan.Missed);
        Assert.Equal(Date(12), plan.Issue?.Date);
    }

    [Fact]
    public void Woken_before_the_next_report_hour_yesterday_is_missed_too()
    {
        var site = Site("America/Chicago", "\"05:00\"");
        var plan = Plan(site, Date(9), Sheet(9, site), Local(site, 12, "02:00"));
        Assert.Equal([Date(10), Date(11)], plan.Missed);
        Assert.Null(plan.Issue);
    }

    [Fact]
    public void A_site_that_never_had_a_sheet_has_missed_none()
    {
        var site = Site("America/Chicago", "\"05:00\"");
        var plan = Plan(site, null, null, Local(site, 12, "02:00"));
        Assert.Empty(plan.Missed);
        Assert.Null(plan.Issue);
    }

    [Fact]
    public void Nothing_is_due_before_the_balance_begins()
    {
        var site = Site("America/Chicago", "\"05:00\"");
        Assert.Null(Plan(site, null, null, Local(site, 1, "12:00").AddDays(-1)).Issue);
    }

    [Fact]
    public void A_clock_set_back_by_hours_asks_for_no_sheet_of_the_day_before()
    {
        var site = Site("America/Chicago", "\"05:00\"");
        var plan = Plan(site, Date(10), null, Local(site, 9, "23:00"));
        Assert.Null(plan.Issue);
        Assert.Empty(plan.Missed);
    }

    [Fact]
    public void Mornings_recorded_by_a_clock_that_ran_ahead_do_not_stand_for_those_that_are_due()
    {
        var site = Site("America/Chicago", "\"05:00\"");
        Assert.Equal(Date(10), Plan(site, Date(20), null, Local(site, 10, "04:51")).Issue?.Date);
        Assert.Equal(Date(10), MorningPlan.Of(site, Date(11), null, Local(site, 10, "04:51"), TenMinutes, isMissed: true).Issue?.Date);
        Assert.Null(Plan(site, Date(20), Sheet(10, site), Local(site, 10, "05:00")).Issue);
    }

    [Fact]
    public void Each_of_two_report_times_makes_a_sheet()
    {
        var site = Site("America/Chicago", "[\"05:00\", \"12:00\"]");
        var morning = new IssuedSheet(Date(10), 1, Local(site, 10, "05:00"), []);
        Assert.Null(Plan(site, Date(10), morning, Local(site, 10, "11:00")).Issue);
        Assert.Equal(Local(site, 10, "12:00"), Plan(site, Date(10), morning, Local(site, 10, "11:50")).Issue?.Instant);
    }

    [Fact]
    public void A_report_hour_just_after_midnight_belongs_to_its_own_date()
    {
        var site = Site("America/Chicago", "\"00:05\"");
        var plan = Plan(site, Date(9), Sheet(9, site), Local(site, 9, "23:56"));
        Assert.Equal(Date(10), plan.Issue?.Date);
        Assert.Empty(plan.Missed);
    }

    [Theory]
    [InlineData("America/New_York", 2026, 11, 1, "05:00")]
    [InlineData("Europe/Berlin", 2026, 10, 25, "02:30")]
    [InlineData("Australia/Lord_Howe", 2026, 10, 4, "02:15")]
    [InlineData("America/St_Johns", 2027, 3, 14, "02:30")]
    [InlineData("Asia/Kathmandu", 2028, 2, 29, "05:00")]
    [InlineData("Pacific/Apia", 2026, 12, 31, "05:00")]
    public void Asked_every_half_minute_through_a_clock_change_every_morning_is_issued_once(string zone, int year, int month, int day, string at)
    {
        var site = Site(zone, $"\"{at}\"");
        var middle = new DateOnly(year, month, day);
        var first = middle.AddDays(-2);
        IssuedSheet? newest = new(first, 1, ReportTime.Of(site, first).Instant, []);
        var issued = new List<DateOnly>();
        for (var now = site.Clock.DayStart(first.AddDays(1)); now < site.Clock.DayStart(middle.AddDays(3)); now = now.AddSeconds(30))
        {
            var plan = Plan(site, newest?.Date, newest, now);
            Assert.Empty(plan.Missed);
            if (plan.Issue is { } due)
            {
                issued.Add(due.Date);
                newest = new(due.Date, 1, due.Instant, []);
            }
        }

        Assert.Equal(Enumerable.Range(-1, 4).Select(middle.AddDays), issued);
    }

    private static DateOnly Date(int day) => new(2026, 6, day);

    private static IssuedSheet Sheet(int day, Site site) => new(Date(day), 1, ReportTime.Of(site, Date(day)).Instant, []);

    private static DateTimeOffset Local(Site site, int day, string clock) =>
        site.Clock.ToInstant(Date(day), TimeOnly.Parse(clock, System.Globalization.CultureInfo.InvariantCulture));

    private static MorningPlan Plan(Site site, DateOnly? recorded, IssuedSheet? sheet, DateTimeOffset now) =>
        MorningPlan.Of(site, recorded, sheet, now, TenMinutes);

    private static Site Site(string zone, string at)
    {
        var yaml = File.ReadAllText(Path.Combine(ExampleSite.Folder, "site", "site.yaml"))
            .Replace("America/Chicago", zone, StringComparison.Ordinal)
            .Replace("at: \"05:00\"", $"at: {at}", StringComparison.Ordinal);
        var reading = SiteReader.Read("site.yaml", yaml, "stations.csv", File.ReadAllText(Path.Combine(ExampleSite.Folder, "site", "stations.csv")));
        return reading.Site ?? throw new InvalidOperationException(reading.Problems[0].ToString());
    }
}
