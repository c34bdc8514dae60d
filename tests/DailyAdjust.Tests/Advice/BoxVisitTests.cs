using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>Which boxes to open where there is no time for all. 10 mm a night at 100 %, 5 mm drawn a day, 50 mm allowed.</summary>
public class BoxVisitTests
{
    /// <summary>
    /// Six boxes of chance. Every choice of N is carried out in the logbook and the morning reckoned again: what the boxes that were not opened then still cost is never
    /// less than after the N that were chosen.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public void No_other_choice_leaves_less_undone(int seed)
    {
        var course = Boxes(seed, 6);
        var all = MorningCalculation.Visits(course.Inputs()).Boxes;
        Assert.InRange(all.Count, 4, 6);
        Assert.True(all.Zip(all.Skip(1)).All(p => p.First.Cost >= p.Second.Cost));
        for (var n = 1; n < all.Count; n++)
        {
            var chosen = LeftUndone(course, all, [.. all.Take(n)]);
            Assert.Equal(all.Skip(n).Sum(b => b.Cost), chosen, 1e-9);
            foreach (var other in Choices(all, n))
            {
                Assert.True(LeftUndone(course, all, other) >= chosen - 1e-9, string.Join(' ', other.Select(b => b.Controller.Id)));
            }
        }
    }

    [Fact]
    public void Equal_boxes_stand_in_walking_order()
    {
        var boxes = MorningCalculation.Visits(Course([(0, 60), (0, 60), (0, 60)], [3, 1, 2]).Inputs()).Boxes;
        Assert.Equal(["C2", "C3", "C1"], boxes.Select(b => b.Controller.Id));
        Assert.Single(boxes.Select(b => b.Cost).Distinct());
    }

    [Fact]
    public void An_order_to_switch_off_goes_before_any_cost_and_a_box_with_nothing_to_do_is_not_named()
    {
        var hold = new LogEntry { Time = new(SmallCourse.Monday, new(4, 0)), Kind = LogKind.Hold, Where = new(PlaceKind.Controller, "C2", ""), Until = new LogTime(SmallCourse.Monday.AddDays(2), null), Note = "drain work" };
        var course = Course([(0, 60), (20, 60), (20, 60)], [1, 2, 3]) with { Log = [hold] };
        var boxes = MorningCalculation.Visits(course.Inputs()).Boxes;
        Assert.Equal(["C2", "C1"], boxes.Select(b => b.Controller.Id));
        Assert.Equal(("C2/P1", SmallCourse.Monday.AddDays(2)), (boxes[0].Orders[0].Program.ToString(), boxes[0].Orders[0].Until!.Value));
        Assert.Equal(0, boxes[0].Cost);

        var off = new LogEntry { Time = new(SmallCourse.Monday, new(4, 30)), Kind = LogKind.Off, Where = new(PlaceKind.Controller, "C2", "") };
        Assert.Equal(["C1"], MorningCalculation.Visits((course with { Log = [hold, off] }).Inputs()).Boxes.Select(b => b.Controller.Id));
    }

    /// <summary>A sheet names what nobody visits; this names the same, and what is visited as planned.</summary>
    [Fact]
    public void Boxes_that_are_visited_as_planned_count_too()
    {
        var course = Course([(0, 60), (0, 60)], [1, 2]);
        Assert.Empty(course.Sheet().IfVisited);
        Assert.Equal(2, MorningCalculation.Visits(course.Inputs()).Boxes.Count);
        Assert.Empty(MorningCalculation.Visits((course with { NewestReading = new(2026, 4, 1, 0, 0, 0, TimeSpan.Zero) }).Inputs()).Boxes);
    }

    private static double LeftUndone(SmallCourse course, IReadOnlyList<BoxVisit> all, IReadOnlyList<BoxVisit> opened)
    {
        var done = opened.SelectMany(b => b.Programs).Select(p => new LogEntry
        {
            Time = new(SmallCourse.Monday, new(4, 59)),
            Kind = LogKind.Setting,
            Where = new(PlaceKind.Program, p.Program.Controller, p.Program.Program),
            Value = p.Advice == AdviceKind.Skip ? 0 : p.Percent!.Value,
            Unit = LogUnit.Percent,
        });
        var rest = MorningCalculation.Visits((course with { Log = [.. course.Log, .. done] }).Inputs()).Boxes;
        return rest.Where(b => !opened.Any(o => string.Equals(o.Controller.Id, b.Controller.Id, StringComparison.Ordinal))).Sum(b => b.Cost);
    }

    private static IEnumerable<IReadOnlyList<BoxVisit>> Choices(IReadOnlyList<BoxVisit> all, int n) =>
        from mask in Enumerable.Range(0, 1 << all.Count)
        where System.Numerics.BitOperations.PopCount((uint)mask) == n
        select (IReadOnlyList<BoxVisit>)[.. all.Where((_, i) => (mask & (1 << i)) != 0)];

    private static SmallCourse Boxes(int seed, int count)
    {
        var dice = new Random(seed);
        // Every other one is wet and gets too much, the others are dry and get too little.
        var course = Course([.. Enumerable.Range(0, count).Select(i => ((double)(i % 2 == 0 ? dice.Next(0, 8) : dice.Next(44, 60)), (double)dice.Next(40, 120)))], [.. Enumerable.Range(1, count)]);
        return course with
        {
            Log = [.. Enumerable.Range(1, count).Select(i => new LogEntry
            {
                Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)),
                Kind = LogKind.Setting,
                Where = new(PlaceKind.Controller, $"C{i}", ""),
                Value = i % 2 == 1 ? dice.Next(5, 11) * 20 : dice.Next(0, 3) * 10,
                Unit = LogUnit.Percent,
            })],
        };
    }

    /// <summary>A box each with one station: depletion, mm, and minutes at 100 %.</summary>
    private static SmallCourse Course((double Mm, double Minutes)[] zones, int[] route) => new()
    {
        Stations = [.. zones.Select((z, i) => SmallCourse.Station(1, minutes: z.Minutes) with { Key = new($"C{i + 1}", "1") })],
        DepletionMm = [.. zones.Select(z => z.Mm)],
        Described = site => site with { Controllers = [.. zones.Select((_, i) => SmallCourse.Box with { Id = $"C{i + 1}", Route = route[i] })] },
    };
}
