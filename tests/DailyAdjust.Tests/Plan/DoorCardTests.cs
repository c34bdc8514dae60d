using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Advice;
using Xunit;

namespace DailyAdjust.Tests.Plan;

/// <summary>What hangs on the door, and its number.</summary>
public class DoorCardTests
{
    private static readonly DateOnly First = new(2026, 4, 1);

    [Fact]
    public void The_chart_shows_minutes_as_the_box_takes_them_and_when_each_start_ends()
    {
        var course = SmallCourse.OneStation(0, minutes: 12.4) with
        {
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00", "23:55")] },
            Stations = [SmallCourse.Station(1, minutes: 12.4), SmallCourse.Station(2, minutes: 20)],
            DepletionMm = [0, 0],
        };
        var chart = DoorChart.Of(course.Site, "C1")!;
        Assert.Equal(12, chart.Stations[0].Minutes[0]);
        Assert.Equal([new TimeOnly(22, 32), new TimeOnly(0, 27)], chart.Programs[0].Finishes);
        Assert.Null(DoorChart.Of(course.Site, "C9"));
    }

    [Fact]
    public void The_revision_counts_changes_of_this_chart_alone()
    {
        var old = SmallCourse.OneStation(0).Site;
        var sameChart = old with { Name = "another", Stations = [old.Stations[0] with { Rate = new(11) }] };
        var longer = SmallCourse.OneStation(0, minutes: 61).Site;
        List<SiteVersion> history = [new(First, old)];
        Assert.Equal((1, First), Number(history));
        history.Add(new(First.AddDays(5), sameChart));
        Assert.Equal((1, First), Number(history));
        history.Add(new(First.AddDays(9), longer));
        Assert.Equal((2, First.AddDays(9)), Number(history));
        history.Add(new(First.AddDays(12), old));
        Assert.Equal((3, First.AddDays(12)), Number(history));
        var pausing = SmallCourse.Box with { StationGap = TimeSpan.FromMinutes(2) };
        IReadOnlyList<Station> two = [old.Stations[0], old.Stations[0] with { Key = new("C1", "2") }];
        history.Add(new(First.AddDays(14), old with { Stations = two }));
        history.Add(new(First.AddDays(15), old with { Stations = two, Controllers = [pausing] }));
        Assert.Equal((5, First.AddDays(15)), Number(history)); // it ends two minutes later
    }

    private static (int Revision, DateOnly From) Number(IReadOnlyList<SiteVersion> history)
    {
        var card = DoorCard.Of(history, "C1");
        return (card.Revision, card.From);
    }
}
