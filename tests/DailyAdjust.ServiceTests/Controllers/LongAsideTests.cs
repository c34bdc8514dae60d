using System.Globalization;
using Xunit;

namespace DailyAdjust.ServiceTests.Controllers;

/// <summary>
/// A station that needs 1.4 times what its area does, through three weeks of the real program: 12 minutes give 5 mm, the area's day. The night crew hoses
/// what it lacks, so that every morning finds it the same.
/// </summary>
public sealed class LongAsideTests
{
    private static readonly DateOnly First = new(2026, 5, 4);

    [Fact]
    public void After_three_weeks_of_sheets_a_station_set_aside_is_to_have_other_minutes()
    {
        using var course = new SmallCourse(
            SmallCourse.Box("C1", "{ applies: program, max: 200 %, step: 5 % }", "route: 1", ("P1", "\"20:00\"")),
            "controller,station,area,minutes P1,precipitation rate (mm/h),exposure\nC1,1,greens,12,25,1\nC1,2,greens,12,25,1\nC1,3,greens,12,25,1\nC1,7,greens,12,25,1.4",
            soil: "full",
            area: "leave_empty: 0 %");
        course.Log(["2026-05-04 04:00,setting,C1/P1,100,%,,Ana,", .. Enumerable.Range(1, 21).Select(n => $"{Day(n)} 04:30,hose,C1/7,2,mm,,Ana,")]);

        for (var n = 0; n < 21; n++)
        {
            var sheet = course.Morning(Day(n));
            Assert.Equal(("leave", 100), sheet.Said("C1/P1"));
            var zones = sheet.Program("C1/P1").GetProperty("zones").EnumerateArray().ToList();
            Assert.Equal(["7"], zones.Where(z => z.GetProperty("setAside").GetBoolean()).Select(z => z.GetProperty("station").GetString()));
            if (n < 16)
            {
                Assert.Empty(sheet.Ground.GetProperty("minutes").EnumerateArray());
                Assert.DoesNotContain("Change station", sheet.Text, StringComparison.Ordinal);
            }
        }

        // 12 min x 140 / 100 = 16.8, to the dry side.
        var after = course.Morning(Day(21));
        var change = Assert.Single(after.Ground.GetProperty("minutes").EnumerateArray());
        Assert.Equal(("C1", "P1", "7"), (change.GetProperty("controller").GetString(), change.GetProperty("program").GetString(), change.GetProperty("station").GetString()));
        Assert.Equal((12, 16, 21), (change.GetProperty("from").GetDouble(), change.GetProperty("to").GetDouble(), change.GetProperty("mornings").GetInt32()));
        Assert.Equal((140.0, 100.0), (change.GetProperty("needPercent").GetDouble(), change.GetProperty("medianPercent").GetDouble()));
        foreach (var words in new[] { after.Text, after.Page })
        {
            Assert.Contains("Base minutes to change", words, StringComparison.Ordinal);
            Assert.Contains("in C1/P1 from 12 min to 16 min: on 21 mornings since Mon 4 May it alone needed 140 %", words, StringComparison.Ordinal);
        }
    }

    private static string Day(int n) => First.AddDays(n).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
