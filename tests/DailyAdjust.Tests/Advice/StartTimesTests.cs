using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>Starts in the hours that a clock skips and repeats. New York: 14 March 2027 02:00 becomes 03:00, 1 November 2026 02:00 becomes 01:00 (IANA tzdata).</summary>
public class StartTimesTests
{
    private static readonly TimeZoneInfo NewYork = TimeZoneInfo.FindSystemTimeZoneById("America/New_York");

    [Theory]
    [InlineData("2027-03-13", "02:30", false, "2027-03-14T07:00")] // skipped: when the gap ends, 03:00 daylight time
    [InlineData("2026-10-31", "01:30", false, "2026-11-01T05:30")] // repeated: the first, still daylight time
    [InlineData("2026-10-31", "01:30", true, "2026-11-01T06:30")] // the box stays on standard time
    [InlineData("2026-07-01", "02:30", true, "2026-07-02T07:30")]
    public void A_start_is_one_instant(string date, string start, bool staysStandard, string utc)
    {
        var course = SmallCourse.OneStation(30) with
        {
            Zone = NewYork,
            Date = DateOnly.ParseExact(date, "yyyy-MM-dd", null),
            Controller = SmallCourse.Box with { ClockStaysStandard = staysStandard, Programs = [SmallCourse.EveryNight("P1", start)] },
        };
        Assert.Equal(utc, course.Advice().NextStart!.Value.UtcDateTime.ToString("yyyy-MM-ddTHH:mm", null));
    }
}
