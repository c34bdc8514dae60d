using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>Stations that must not run together.</summary>
public class StationClashTests
{
    [Theory]
    [InlineData("22:30", 1)]
    [InlineData("23:00", 0)] // one ends as the other begins
    public void Two_of_a_group_at_once_are_named(string second, int found)
    {
        var clashes = Clashes(second, ["1", "2"]);
        Assert.Equal(found, clashes.Count);
        Assert.All(clashes, c => Assert.Equal(("lateral", "C1/1", "C1/2", TimeSpan.FromMinutes(30)), (c.Group, c.First.ToString(), c.Second.ToString(), c.To - c.From)));
    }

    [Fact]
    public void Others_may() => Assert.Empty(Clashes("22:30", ["1", "3"]));

    private static IReadOnlyList<Core.Advice.StationClash> Clashes(string second, string[] group)
    {
        var course = new SmallCourse
        {
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", second)] },
            Stations = [SmallCourse.Station(1, programs: "P1"), SmallCourse.Station(2, programs: "P2"), SmallCourse.Station(3, programs: "P1")],
            DepletionMm = [5, 5, 5],
            NotTogether = [new StationGroup("lateral", [.. group.Select(s => new StationKey("C1", s))])],
        };
        return course.Sheet().Fit.Clashes;
    }
}
